import { describe, expect, it } from 'vitest';
import { fold } from '../../../src/core/part/fold';
import { inSpace, vector } from '../../../src/core/geometry/frame';
import type { Vector3 } from '../../../src/core/geometry/types';
import type { Layout } from '../../../src/core/part/layoutTypes';
import { allDegrees, bentAfter, stageInWords } from '../../../src/ui/folded/bendProgress';
import { faceTone, foldedColours } from '../../../src/ui/folded/colours';
import type { Metal } from '../../../src/ui/folded/colours';
import { isInside, pickFolded } from '../../../src/ui/folded/pickFolded';
import { bendSilhouette, legSilhouette } from '../../../src/ui/folded/silhouette';
import { axes, FIRST_ANGLES, fitted, isInView, onScreen, SECTION_ANGLES, slid, turned, underScreen, zoomed } from '../../../src/ui/folded/view';
import type { View } from '../../../src/ui/folded/view';
import { frontStrap, laidOut, leg, wallBracket } from './sampleParts';

const size = { width: 400, height: 200 };
const dot = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;
const cloud = [vector(0, -8, -2), vector(160, 8, 0), vector(40, 3, 30), vector(-5, 0, 12)];

describe('view', () => {
  it('stands as the section does: x to the right, z up, from the near edge', () => {
    const { right, up, towards } = axes(SECTION_ANGLES);
    expect([right, up, towards].map((v) => [v.x + 0, v.y + 0, v.z + 0])).toEqual([[1, 0, 0], [0, 0, 1], [0, -1, 0]]);
  });

  it('has square axes of length one that never turn the part on its head', () => {
    let view: View = fitted(FIRST_ANGLES, size, cloud);
    for (const [dx, dy] of [[50, 20], [-300, 900], [10, -5000], [77, 31]] as const) {
      view = turned(view, dx, dy);
      const { right, up, towards } = axes(view);
      for (const v of [right, up, towards]) expect(dot(v, v)).toBeCloseTo(1, 12);
      expect(dot(right, up)).toBeCloseTo(0, 12);
      expect(dot(right, towards)).toBeCloseTo(0, 12);
      expect(dot(up, towards)).toBeCloseTo(0, 12);
      expect(up.z).toBeGreaterThanOrEqual(-1e-12);
    }
  });

  it('swings the near side with the finger', () => {
    const view = fitted(SECTION_ANGLES, size, cloud);
    const near = vector(view.middle.x, view.middle.y - 10, view.middle.z);
    expect(onScreen(turned(view, 40, 0), size, near).x).toBeGreaterThan(onScreen(view, size, near).x + 5);
    expect(onScreen(turned(view, 0, 40), size, near).y).toBeGreaterThan(onScreen(view, size, near).y + 5);
  });

  it.each([FIRST_ANGLES, SECTION_ANGLES, { around: 2, above: -1.2 }])('fits all of the part, filling one way: %o', (angles) => {
    const view = fitted(angles, size, cloud);
    expect(isInView(view, size, cloud)).toBe(true);
    const shown = cloud.map((p) => onScreen(view, size, p));
    const span = (of: (p: { x: number; y: number }) => number): number => Math.max(...shown.map(of)) - Math.min(...shown.map(of));
    expect(Math.max(span((p) => p.x) / size.width, span((p) => p.y) / size.height)).toBeCloseTo(0.92, 9);
    expect(isInView({ ...view, scale: view.scale * 1.2 }, size, cloud)).toBe(false);
  });

  it('finds the point under the finger again', () => {
    const view = fitted(FIRST_ANGLES, size, cloud);
    const p = onScreen(view, size, underScreen(view, size, 123, 45));
    expect(p.x).toBeCloseTo(123, 9);
    expect(p.y).toBeCloseTo(45, 9);
    expect(p.depth).toBeCloseTo(0, 9);
  });

  it('zooms about the finger and slides with it', () => {
    const view = fitted(FIRST_ANGLES, size, cloud);
    const held = underScreen(view, size, 300, 60);
    const near = onScreen(zoomed(view, size, 2.5, 300, 60), size, held);
    expect([near.x, near.y]).toEqual([expect.closeTo(300, 8), expect.closeTo(60, 8)]);
    expect(zoomed(view, size, 2.5, 300, 60).scale).toBeCloseTo(2.5 * view.scale, 9);
    const moved = onScreen(slid(view, 30, -12), size, held);
    expect([moved.x, moved.y]).toEqual([expect.closeTo(330, 8), expect.closeTo(48, 8)]);
  });

  it('stays finite with nothing to show and at any zoom', () => {
    expect(Number.isFinite(fitted(FIRST_ANGLES, size, []).scale)).toBe(true);
    expect(zoomed(fitted(FIRST_ANGLES, size, cloud), size, 1e9, 0, 0).scale).toBeLessThanOrEqual(200);
    expect(zoomed(fitted(FIRST_ANGLES, size, cloud), size, 1e-9, 0, 0).scale).toBeGreaterThan(0);
  });
});

describe('silhouette', () => {
  it('of a round end stands where the wall is seen edge on', () => {
    const layout = laidOut(frontStrap);
    const folded = fold(layout);
    const { towards } = axes(FIRST_ANGLES);
    const rounds = layout.legs[0]?.plan.filter((s) => s.kind === 'arc') ?? [];
    const frame = folded.legs[0];
    if (!frame) throw new Error('no leg');
    const ends = legSilhouette(frame, rounds, 1.6, towards);
    expect(ends).toHaveLength(6);
    const [x = NaN, y = NaN, z1, x2, y2, z2] = ends;
    expect([x2, y2, z1, z2]).toEqual([x, y, 0, -1.6]);
    // The round end's centre is 8 mm in; the wall's normal points from it to the line.
    expect(Math.hypot(x - 8, y)).toBeCloseTo(8, 9);
    expect(((x - 8) * towards.x + y * towards.y) / 8).toBeCloseTo(0, 9);
    expect(x).toBeLessThan(8);
  });

  it.each(['up', 'down'] as const)('of a bend %s lies on its outside, where that is seen edge on', (way) => {
    const layout = laidOut({ ...frontStrap, legs: [leg('a', 30, 16), leg('b', 30, 16, { bend: { parent: 0, edge: 'end', turn: Math.PI / 2, way, radius: 2 } })] });
    const bend = fold(layout).bends[0];
    if (!bend) throw new Error('no bend');
    // Half way round the bend, across it: the outside is edge on at 45°.
    const towards = vector(Math.SQRT1_2, 0, way === 'up' ? Math.SQRT1_2 : -Math.SQRT1_2);
    const ends = bendSilhouette(bend, 1.6, towards);
    expect(ends).toHaveLength(6);
    const centre = inSpace(bend.frame, vector(0, 0, way === 'up' ? 2 : -3.6));
    const [x = NaN, y1 = NaN, z = NaN, , y2 = NaN] = ends;
    expect(Math.hypot(x - centre.x, z - centre.z)).toBeCloseTo(3.6, 9);
    expect((x - centre.x) * towards.x + (z - centre.z) * towards.z).toBeCloseTo(0, 9);
    expect(Math.abs(y2 - y1)).toBeCloseTo(16, 9);
    // Looked at from the side there is none, and none on a bend not yet begun.
    expect(bendSilhouette(bend, 1.6, vector(0, -1, 0))).toEqual([]);
    const flat = fold(layout, [1, 0]).bends[0];
    expect(flat && bendSilhouette(flat, 1.6, towards)).toEqual([]);
  });
});

describe('inside', () => {
  const slot = laidOut(wallBracket).legs[1]?.cutouts[0];
  const window = laidOut(wallBracket).legs[1]?.cutouts[1];
  it.each([
    ['middle', 0, 0, true], ['in the round end', 12, 0, true], ['beyond the round end', 13.1, 0, false],
    ['beside it', 0, 3.1, false], ['past the end, level with the edge', 12.6, 2.6, false],
  ] as const)('a slot 26 × 6: %s', (_, dx, dy, inside) => {
    if (!slot) throw new Error('no slot');
    expect(isInside(slot.contour, { x: slot.centre.x + dx, y: slot.centre.y + dy })).toBe(inside);
  });
  it('a turned window with rounded corners', () => {
    if (!window) throw new Error('no window');
    const at = (along: number, across: number) => isInside(window.contour, {
      x: window.centre.x + along * Math.cos(0.3) - across * Math.sin(0.3), y: window.centre.y + along * Math.sin(0.3) + across * Math.cos(0.3),
    });
    expect([at(3.9, 0), at(3.9, 4.9), at(3.6, 4.6), at(4.1, 0), at(0, -4.9), at(0, -5.1)]).toEqual([true, false, true, false, true, false]);
  });
});

describe('pick', () => {
  const layout = laidOut(frontStrap);
  const folded = fold(layout);
  const points = folded.legs.map((f) => f.origin);
  const view: View = { ...fitted({ around: 0, above: Math.PI / 2 }, size, points), scale: 4 };
  const centre = (part: Layout, legIndex: number, item: number, seen: View) => {
    const at = part.legs[legIndex]?.cutouts[item]?.centre;
    const frame = fold(part).legs[legIndex];
    if (!at || !frame) throw new Error('no hole');
    return onScreen(seen, size, inSpace(frame, vector(at.x, at.y, 0)));
  };
  const peg = centre(layout, 2, 3, view);

  it('takes the hole the line of sight goes through, with nothing behind it', () => {
    expect(pickFolded(layout, folded, view, size, peg.x, peg.y, undefined)).toEqual({ kind: 'cutout', leg: 'peg-leg', cutout: 'peg' });
  });

  it('takes a hole within reach of the finger, and the leg between two holes', () => {
    // Pegs are 15 mm or 60 px apart: each reaches a third of that, 20 px.
    const hit = { kind: 'leg', leg: 2, depth: peg.depth } as const;
    expect(pickFolded(layout, folded, view, size, peg.x + 19, peg.y, hit)).toEqual({ kind: 'cutout', leg: 'peg-leg', cutout: 'peg' });
    expect(pickFolded(layout, folded, view, size, peg.x + 21, peg.y, hit)).toEqual({ kind: 'leg', leg: 'peg-leg' });
    expect(pickFolded(layout, folded, view, size, peg.x, peg.y + 25, hit)).toEqual({ kind: 'leg', leg: 'peg-leg' });
  });

  it('gives a lone hole 22 px all round, at any size', () => {
    const foot = centre(layout, 0, 0, view);
    const hit = { kind: 'leg', leg: 0, depth: foot.depth } as const;
    expect(pickFolded(layout, folded, view, size, foot.x + 21.5, foot.y, hit)?.kind).toBe('cutout');
    expect(pickFolded(layout, folded, view, size, foot.x + 22.5, foot.y, hit)?.kind).toBe('leg');
    const far: View = { ...view, scale: 0.5 };
    const small = centre(layout, 0, 0, far);
    expect(pickFolded(layout, folded, far, size, small.x - 21, small.y, undefined)).toEqual({ kind: 'cutout', leg: 'foot', cutout: 'foot-hole' });
  });

  it('leaves a hole alone that lies behind other metal', () => {
    const before = { kind: 'leg', leg: 3, depth: peg.depth + 5 } as const;
    expect(pickFolded(layout, folded, view, size, peg.x, peg.y, before)).toEqual({ kind: 'leg', leg: 'lip' });
    const behind = { kind: 'leg', leg: 3, depth: peg.depth - 5 } as const;
    expect(pickFolded(layout, folded, view, size, peg.x, peg.y, behind)?.kind).toBe('cutout');
  });

  it('names a bend by the leg it leads to, and nothing beside the part', () => {
    expect(pickFolded(layout, folded, view, size, -500, -500, undefined)).toBeUndefined();
    expect(pickFolded(layout, folded, view, size, -500, -500, { kind: 'bend', leg: 1, depth: 0 })).toEqual({ kind: 'bend', leg: 'crank' });
  });

  it('finds holes from behind, and none in a face seen edge on', () => {
    const below: View = { ...view, above: -Math.PI / 2 };
    const seen = centre(layout, 2, 3, below);
    expect(pickFolded(layout, folded, below, size, seen.x, seen.y, undefined)).toEqual({ kind: 'cutout', leg: 'peg-leg', cutout: 'peg' });
    for (const above of [0, 0.03, -0.03]) {
      const edge: View = { ...view, around: 0, above };
      const flat = centre(layout, 2, 3, edge);
      expect(pickFolded(layout, folded, edge, size, flat.x, flat.y, { kind: 'leg', leg: 2, depth: 0 })).toEqual({ kind: 'leg', leg: 'peg-leg' });
    }
  });

  it('measures from the hole in the face that is seen: from below, the back', () => {
    const below: View = { ...view, above: -0.5 };
    const back = onScreen(below, size, vector(8, 0, -1.6));
    for (const up of [16, -16]) {
      expect(pickFolded(layout, folded, below, size, back.x, back.y + up, { kind: 'leg', leg: 0, depth: back.depth })?.kind).toBe('cutout');
    }
    // Brought near, the hole is larger than a finger and is had within its edge only: 19 px up and down, seen so askew.
    const near: View = { ...below, scale: 20 };
    const large = onScreen(near, size, vector(8, 0, -1.6));
    const at = (up: number) => pickFolded(layout, folded, near, size, large.x, large.y + up, { kind: 'leg', leg: 0, depth: large.depth })?.kind;
    expect([-21, -17, 17, 21].map(at)).toEqual(['leg', 'cutout', 'cutout', 'leg']);
  });

  it('keeps to holes and legs', () => {
    expect(pickFolded(layout, { ...folded, legs: [] }, view, size, peg.x, peg.y, undefined)).toBeUndefined();
  });
});

describe('bending by the slider', () => {
  const layout = laidOut(frontStrap);

  it('makes one bend after another', () => {
    expect(allDegrees(layout)).toBeCloseTo(180, 9);
    for (const [degrees, bends] of [[0, [0, 0, 0]], [45, [1, 0, 0]], [75, [1, 2 / 3, 0]], [135, [1, 1, 0.5]], [180, [1, 1, 1]], [999, [1, 1, 1]]] as const) {
      const [first, ...rest] = bentAfter(layout, degrees);
      expect(first).toBe(1);
      rest.forEach((share, i) => expect(share).toBeCloseTo(bends[i] ?? NaN, 9));
    }
  });

  it('says the stage in words', () => {
    expect([0, 30, 45, 75, 170.5, 180].map((d) => stageInWords(layout, d))).toEqual([
      'flat', 'bend 1 of 3, 30° of 45°', 'bend 1 of 3, 45° of 45°', 'bend 2 of 3, 30° of 45°', 'bend 3 of 3, 80.5° of 90°', 'finished',
    ]);
  });
});

describe('colours', () => {
  const metals: Metal[] = ['steel', 'stainless', 'brass', 'copper', 'bronze', 'nickel silver', 'aluminium', 'other'];
  const light = (hex: string): number => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  // WCAG 2.2, contrast ratio.
  const contrast = (a: string, b: string): number => {
    const [hi = 0, lo = 0] = [light(a), light(b)].toSorted((p, q) => q - p);
    return (hi + 0.05) / (lo + 0.05);
  };

  it.each(metals)('%s: ink lines stand out on every tone, and no two tones are alike', (metal) => {
    for (const [dim, least] of [[false, 3], [true, 2.2]] as const) {
      const { tones, ink } = foldedColours(metal, dim);
      for (const tone of Object.values(tones)) expect(contrast(ink, tone)).toBeGreaterThan(least);
      const order = [tones.slope, tones.top, tones.upright, tones.edge, tones.under].map(light);
      expect(order).toEqual(order.toSorted((a, b) => b - a));
      expect(new Set(order).size).toBe(5);
    }
  });

  it('goes by how the face lies', () => {
    expect([1, 0.97, 0.71, 0.2, -0.2, -0.3, -1].map(faceTone)).toEqual(['top', 'top', 'slope', 'upright', 'upright', 'under', 'under']);
  });
});
