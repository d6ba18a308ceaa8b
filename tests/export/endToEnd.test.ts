/** From a part to the cutter's file: the front strap of the vent stay, with a side lug. */
import { describe, expect, it } from 'vitest';
import { layOut } from '../../src/core/part/layOut';
import type { Blank } from '../../src/core/part/layoutTypes';
import type { Leg, Part } from '../../src/core/part/types';
import { unfold } from '../../src/core/part/unfold';
import { cutDrawing } from '../../src/drawing/cutDrawing';
import { writeDxf } from '../../src/export/dxf/writeDxf';
import { must } from './must';
import { readWithEzdxf } from './readers';
import { settings } from './sampleBlanks';
import { strictTags } from './strictTags';

const THICKNESS = 1.6;
const RADIUS = 2;
const K = 0.42;
const plain = { startBasis: 'outside', endBasis: 'outside', startWidth: 20, endWidth: 20, startShape: { kind: 'square' }, endShape: { kind: 'square' } } as const;
const holes = (length: number): Leg['cutouts'] => [
  {
    id: 'pegs', name: 'Peg hole', shape: { kind: 'round', diameter: 3.2 },
    along: { from: 'middle', basis: 'outside', distance: 0 }, across: { from: 'centre', distance: 0 },
    pattern: { kind: 'row', direction: 'along', count: 3, pitch: length / 5 },
  },
];
const strap: Part = {
  thickness: THICKNESS,
  rule: { kind: 'fixedK', k: K },
  legs: [
    { ...plain, id: 'foot', name: 'Foot', length: 30, startShape: { kind: 'round' }, cutouts: [] },
    { ...plain, id: 'arm', name: 'Arm', length: 80, cutouts: holes(80), bend: { parent: 0, edge: 'end', turn: Math.PI / 2, way: 'up', radius: RADIUS } },
    {
      ...plain, id: 'tip', name: 'Tip', length: 25, endShape: { kind: 'radius', radius: 4 },
      cutouts: [{
        id: 'slot', name: 'Slot', shape: { kind: 'slot', length: 9, width: 4, turn: 0.3 },
        along: { from: 'end', basis: 'outside', distance: 10 }, across: { from: 'centre', distance: 0 }, pattern: { kind: 'single' },
      }],
      bend: { parent: 1, edge: 'end', turn: Math.PI / 3, way: 'down', radius: RADIUS },
    },
    {
      ...plain, id: 'lug', name: 'Lug', length: 14, startWidth: 12, endWidth: 12, endShape: { kind: 'round' }, cutouts: [],
      bend: {
        parent: 1, edge: 'left', turn: Math.PI / 2, way: 'up', radius: RADIUS,
        seat: { along: { from: 'middle', basis: 'outside', distance: 0 }, basis: 'outside', relief: { kind: 'round', width: 2, depth: 4 } },
      },
    },
  ],
};

function blankOf(part: Part): Blank {
  const layout = layOut(part);
  if (!layout.ok) throw new Error(JSON.stringify(layout));
  return unfold(layout.value);
}

describe('a part as a cutter gets it', () => {
  const blank = blankOf(strap);

  it.each(['none', 'layer', 'nicks'] as const)('is read back with the areas, sizes and holes of its blank, bend lines: %s', async (bendLines) => {
    const cut = must(cutDrawing(blank, { bendLines, thickness: THICKNESS }));
    const text = must(writeDxf(cut.drawing, settings));
    expect(cut.leftOut).toEqual([]);
    expect(strictTags(text)).toEqual([]);
    const [read] = await readWithEzdxf(text);
    expect(read?.errors).toEqual([]);
    const outlines = read?.entities.filter((e) => e.layer === 'OUTLINE') ?? [];
    expect(outlines.map((e) => [e.type, e.closed])).toEqual([['LWPOLYLINE', true]]);
    const inside = read?.entities.filter((e) => e.layer === 'CUT-OUTS') ?? [];
    expect(inside.map((e) => e.type)).toEqual(['CIRCLE', 'CIRCLE', 'CIRCLE', 'LWPOLYLINE']);
    const area = (outlines[0]?.area ?? NaN) - inside.reduce((sum, e) => sum + (e.area ?? NaN), 0);
    expect(Math.abs(area / cut.area - 1)).toBeLessThan(1e-6);
    // Three bends, two ends each, half the thickness wide and deep. All these ends lie on straight edges.
    const bites = bendLines === 'nicks' ? (6 * (THICKNESS / 2) ** 2) / 2 : 0;
    expect(Math.abs(area - (blank.area - bites))).toBeLessThan(1e-6 * blank.area);
    expect(read?.entities.filter((e) => e.layer === 'BENDS')).toHaveLength(bendLines === 'layer' ? 3 : 0);
    for (const i of [0, 1] as const) {
      expect(Math.abs((read?.extMax[i] ?? NaN) - (i === 0 ? blank.bounds.maxX : blank.bounds.maxY))).toBeLessThan(1e-9);
    }
  });

  it('has the developed length that the handbook rule gives', async () => {
    const { legs } = strap;
    const [read] = await readWithEzdxf(must(writeDxf(must(cutDrawing(blank, { bendLines: 'none', thickness: THICKNESS })).drawing, settings)));
    // Outside lengths less a bend deduction for each bend, 2 (r + t) tan(θ/2) − θ (r + K t): definition.
    const deduction = (turn: number): number => 2 * (RADIUS + THICKNESS) * Math.tan(turn / 2) - turn * (RADIUS + K * THICKNESS);
    const developed = (legs[0]?.length ?? NaN) + (legs[1]?.length ?? NaN) + (legs[2]?.length ?? NaN) - deduction(Math.PI / 2) - deduction(Math.PI / 3);
    expect((read?.extMax[0] ?? NaN) - (read?.extMin[0] ?? NaN)).toBeCloseTo(developed, 8);
  });
});
