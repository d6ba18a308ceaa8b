/** The materials of the folded view: flat colours for faces, and lines of a width in px. One of each colour. */
import { MeshBasicMaterial } from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import type { FoldedBend } from '../../core/part/layoutTypes';
import type { Frame } from '../../core/geometry/types';
import { faceTone } from './colours';
import type { FoldedColours } from './colours';
import type { PieceMaterials } from './Piece';

const INK_PX = 1.3;
/** Rims of holes: small in the view, and thicker lines would fill them. */
const RIM_PX = 1.1;
const BLUE_PX = 2.6;
const DASH_PX = { dash: 6, gap: 4 };

export class Palette {
  private readonly faces = new Map<string, MeshBasicMaterial>();
  readonly ink = new LineMaterial({ linewidth: INK_PX });
  readonly rim = new LineMaterial({ linewidth: RIM_PX });
  readonly blue = new LineMaterial({ linewidth: BLUE_PX });
  private colours: FoldedColours | undefined;

  /** @param stale whether the shape is the last good one and not what is typed */
  take(colours: FoldedColours, stale: boolean): void {
    this.colours = colours;
    this.ink.color.set(stale ? colours.faded : colours.ink);
    this.rim.color.set(stale ? colours.faded : colours.ink);
    this.blue.color.set(colours.blue);
    for (const lines of this.lines()) {
      lines.dashed = stale;
      lines.dashSize = DASH_PX.dash;
      lines.gapSize = DASH_PX.gap;
    }
  }

  /** Dashes keep their length on the screen. @param scale px for one mm */
  setScale(scale: number): void {
    for (const lines of this.lines()) lines.dashScale = scale;
  }

  private lines(): readonly LineMaterial[] {
    return [this.ink, this.rim, this.blue];
  }

  private face(colour: string): MeshBasicMaterial {
    const made = this.faces.get(colour);
    if (made) return made;
    // Faces step back a little so that the lines on their edges are whole.
    const material = new MeshBasicMaterial({ color: colour, polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });
    this.faces.set(colour, material);
    return material;
  }

  private pieceMaterials(marked: number, isBend: boolean, isChosen: boolean, cutout: number | undefined): PieceMaterials {
    const { colours } = this;
    if (!colours) throw new Error('The palette was asked for materials before it was given its colours.');
    const colour = (rise: number): string => {
      const tone = faceTone(rise);
      if (isChosen) return tone === 'under' ? colours.chosenEdge : colours.chosenFace;
      return colours.tones[isBend && tone !== 'under' ? 'slope' : tone];
    };
    const walls = this.face(isChosen ? colours.chosenEdge : colours.tones.edge);
    const materials = {
      marked: this.face(colour(marked)),
      back: this.face(colour(-marked)),
      walls,
      openings: this.face(colours.tones.edge),
      lines: isChosen ? this.blue : this.ink,
      rims: this.rim,
    };
    return cutout === undefined
      ? materials
      : { ...materials, chosen: { cutout, walls: this.face(colours.chosenEdge), lines: this.blue } };
  }

  /** @param cutout index of the chosen cut-out, if it is on this leg */
  forLeg(frame: Frame, isChosen: boolean, cutout: number | undefined): PieceMaterials {
    return this.pieceMaterials(frame.z.z, false, isChosen, cutout);
  }

  /** A bend has one tone a side: that of the middle of its turn. */
  forBend(bend: FoldedBend, isChosen: boolean): PieceMaterials {
    const half = bend.turn / 2;
    const lean = bend.way === 'up' ? -Math.sin(half) : Math.sin(half);
    return this.pieceMaterials(lean * bend.frame.x.z + Math.cos(half) * bend.frame.z.z, true, isChosen, undefined);
  }

  dispose(): void {
    for (const material of this.faces.values()) material.dispose();
    for (const lines of this.lines()) lines.dispose();
  }
}
