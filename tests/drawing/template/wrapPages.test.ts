/** A wrapped template against the bent part: the way along a face from hole to hole. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inSpace, vector } from '../../../src/core/geometry/frame';
import type { Vector3 } from '../../../src/core/geometry/types';
import { fold } from '../../../src/core/part/fold';
import { layOut, type WalkableLayout } from '../../../src/core/part/layOut';
import { unfold } from '../../../src/core/part/unfold';
import { faceLayout, wrapPages } from '../../../src/drawing/template/wrapPages';
import type { Face } from '../../../src/drawing/template/types';
import { must } from '../../export/must';
import { STRAP, workablePart } from '../sampleParts';
import { settings, subject } from './subjects';

const far = (a: Vector3, b: Vector3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
const angleBetween = (a: Vector3, b: Vector3): number => {
  const dot = a.x * b.x + a.y * b.y + a.z * b.z;
  const cross = Math.hypot(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
  return Math.atan2(cross, dot);
};

/**
 * mm along a face of the bent part from the start of the first leg to x of a leg: straights from point to point in space, and each
 * arc from its chord and the angle between the legs, without knowing its radius.
 */
function alongFace(layout: WalkableLayout, face: Face, leg: number, x: number): number {
  const folded = fold(layout);
  const z = face === 'marked' ? 0 : -layout.part.thickness;
  const at = (i: number, along: number): Vector3 => inSpace(folded.legs[i]!, vector(along, 0, z));
  let sum = 0;
  for (let i = 0; i < leg; i++) {
    const end = at(i, layout.legs[i]!.straight);
    sum += far(at(i, 0), end);
    const turn = angleBetween(folded.legs[i]!.x, folded.legs[i + 1]!.x);
    sum += ((far(end, at(i + 1, 0)) / 2) * turn) / Math.sin(turn / 2);
  }
  return sum + far(at(leg, 0), at(leg, x));
}

/** mm along the wrapped template from the start of the first leg to each hole, and along the face of the bent part. */
function compare(layout: WalkableLayout, face: Face): readonly (readonly [paper: number, metal: number])[] {
  const paper = unfold(faceLayout(layout, face));
  const begin = paper.legs[0]?.x ?? NaN;
  return paper.cutouts.map(({ leg, cutout, item, centre }) => {
    const own = layout.legs[leg]?.cutouts.find((c) => c.cutout === cutout && c.item === item);
    const x = own?.centre.x ?? NaN;
    // A hole may lie before its leg's start line; then the way goes back by as much.
    return [centre.x - begin, alongFace(layout, face, leg, Math.abs(x)) - (x < 0 ? 2 * Math.abs(x) : 0)] as const;
  });
}

const laid = (part: Parameters<typeof layOut>[0]): WalkableLayout | undefined => {
  const layout = layOut(part);
  return layout.ok ? layout.value : undefined;
};

describe('wrapped template', () => {
  it.each(['marked', 'other'] as const)('has every hole of the strap where it is on the %s face', (face) => {
    const pairs = compare(laid(STRAP)!, face);
    expect(pairs).toHaveLength(8);
    for (const [paper, metal] of pairs) expect(Math.abs(paper - metal)).toBeLessThan(1e-9);
  });

  it('has the arcs of a hand-worked right angle', () => {
    // Bends of the strap: 45° up, 45° down, 90° up, inside radius 2.0, t 1.6. Marked face: π/4 · 2 + π/4 · 3.6 + π/2 · 2.
    const straights = laid(STRAP)!.legs.reduce((sum, leg) => sum + leg.straight, 0);
    expect(unfold(faceLayout(laid(STRAP)!, 'marked')).developedLength).toBeCloseTo(straights + 5.6 * (Math.PI / 4) + Math.PI, 9);
    expect(unfold(faceLayout(laid(STRAP)!, 'other')).developedLength).toBeCloseTo(straights + 5.6 * (Math.PI / 4) + 3.6 * (Math.PI / 2), 9);
  });

  it('does so for random parts, sharp inner corners included', () => {
    let holes = 0;
    let sharp = 0;
    fc.assert(
      fc.property(workablePart, fc.constantFrom('marked' as const, 'other' as const), (part, face) => {
        const layout = laid(part);
        if (!layout) return;
        if (part.legs.some((l) => l.bend?.radius === 0)) sharp += 1;
        for (const [paper, metal] of compare(layout, face)) {
          holes += 1;
          expect(Math.abs(paper - metal)).toBeLessThan(1e-7);
        }
      }),
      { numRuns: 200 },
    );
    expect(holes).toBeGreaterThan(500);
    expect(sharp).toBeGreaterThan(20);
  });

  it('comes as pages that say what they are', () => {
    for (const face of ['marked', 'other'] as const) {
      const pages = must(wrapPages([subject('strap', { face })], settings()));
      const said = pages.flatMap((p) => p.entities.flatMap((e) => (e.kind === 'text' ? [e.text] : [])));
      expect(said.some((text) => text.includes(`wraps round the bent part, ${face} face`))).toBe(true);
      expect(said).toContain(face === 'marked' ? '90° up' : '90° down');
    }
  });
});
