import { bad, good } from '../../core/result';
import type { Result } from '../../core/result';
import type { Drawing, Role } from '../../drawing/entities';
import type { Job } from '../../job/schema';
import { layerName } from './layerName';

export type LayerUse = keyof Job['dxf']['layers'];

/** The roles that are cut or marked, each with the layer it goes to. */
const USES: Partial<Record<Role, LayerUse>> = { outline: 'outline', hole: 'cutouts', 'bend centre line': 'bends' };

const WORDS: Record<LayerUse, string> = { outline: 'outline', cutouts: 'cut-outs', bends: 'bends' };

/**
 * Colour index: black or white for what is cut, blue for what is only marked.
 * Common practice of cutters that sort by colour, no source.
 */
const COLOURS: Record<LayerUse, number> = { outline: 7, cutouts: 7, bends: 5 };

export interface DxfLayer {
  readonly name: string;
  readonly colour: number;
}

export interface LayerPlan {
  readonly layers: readonly DxfLayer[];
  /** Index in `layers` for each use that the drawing makes. */
  readonly of: Partial<Record<LayerUse, number>>;
}

export function layerUse(role: Role): LayerUse | undefined {
  return USES[role];
}

/**
 * The layers that this drawing needs and no others, so that the bureau finds no empty ones. Two uses may share a layer; DXF
 * does not tell capitals from small letters, so `Cut` and `CUT` are one layer, spelt as it comes first.
 */
export function planLayers(drawing: Drawing, names: Job['dxf']['layers']): Result<LayerPlan> {
  const used = new Set<LayerUse>();
  for (const entity of drawing.entities) {
    const use = layerUse(entity.role);
    if (!use) return bad('drawing', `A cutting file holds only what is cut or marked, and this drawing has a ${entity.role} in it. Use the cut drawing.`);
    used.add(use);
  }
  const layers: DxfLayer[] = [];
  const of: Partial<Record<LayerUse, number>> = {};
  for (const use of ['outline', 'cutouts', 'bends'] as const) {
    if (!used.has(use)) continue;
    const name = layerName(`dxf.layers.${use}`, WORDS[use], names[use]);
    if (!name.ok) return name;
    const same = layers.findIndex((layer) => layer.name.toUpperCase() === name.value.toUpperCase());
    of[use] = same >= 0 ? same : layers.push({ name: name.value, colour: COLOURS[use] }) - 1;
  }
  return good({ layers, of });
}
