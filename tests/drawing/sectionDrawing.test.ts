import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { setback } from '../../src/core/bending/setback';
import type { Drawing, PathEntity, TextEntity } from '../../src/drawing/entities';
import { lineAngle } from '../../src/drawing/hatch';
import { bend, drawn, type Drawn, hole, leg, mustDraw, STRAP, workablePart } from './sampleParts';

const path = (drawing: Drawing, key: string): PathEntity => {
  const found = drawing.entities.find((e) => e.key === key);
  if (found?.kind !== 'path') throw new Error(`No path ${key}`);
  return found;
};
const texts = (drawing: Drawing): readonly TextEntity[] => drawing.entities.filter((e) => e.kind === 'text');

/** mm between the two ends that the arrows of a dimension point at: the first point of each head. */
function measured(drawing: Drawing, key: string): number {
  const [a, b] = path(drawing, `${key} arrows`).runs.map((run) => run.segments[0]?.from);
  if (!a || !b) throw new Error(`No arrows on ${key}`);
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** x along the leg of what the second arrow of a hole's position points at. */
function pointedAt({ section }: Drawn, legId: string, cutoutId: string): number {
  const marked = path(section, `${legId} area`).runs[0]?.segments[0];
  const tip = path(section, `${legId} ${cutoutId} position arrows`).runs[1]?.segments[0]?.from;
  if (!marked || !tip) throw new Error(`No position of ${cutoutId}`);
  const { from, to } = marked;
  const length = Math.hypot(from.x - to.x, from.y - to.y);
  return ((tip.x - to.x) * (from.x - to.x) + (tip.y - to.y) * (from.y - to.y)) / length;
}

/** x along the leg of the opening that is dimensioned: the first, or the middle of a run that is centred. */
function placeOf({ layout }: Drawn, legId: string, cutoutId: string): number {
  const index = layout.part.legs.findIndex((l) => l.id === legId);
  const cutout = layout.part.legs[index]?.cutouts.findIndex((c) => c.id === cutoutId) ?? -1;
  const xs = layout.legs[index]?.cutouts.filter((c) => c.cutout === cutout).map((c) => c.centre.x) ?? [];
  const centred = layout.part.legs[index]?.cutouts[cutout]?.along.from === 'middle';
  return centred ? ((xs[0] ?? NaN) + (xs.at(-1) ?? NaN)) / 2 : (xs[0] ?? NaN);
}

describe('dimensions of the section', () => {
  it('are as long as the lengths given, leg by leg, hole by hole', () => {
    let legs = 0;
    let positions = 0;
    fc.assert(
      fc.property(workablePart, (part) => {
        const both = drawn(part);
        if (!both) return;
        for (const l of part.legs) {
          expect(Math.abs(measured(both.section, `${l.id} length`) - l.length)).toBeLessThan(1e-9);
          legs += 1;
          for (const c of l.cutouts) {
            if (c.along.distance === 0) continue;
            expect(Math.abs(measured(both.section, `${l.id} ${c.id} position`) - c.along.distance)).toBeLessThan(1e-9);
            expect(Math.abs(pointedAt(both, l.id, c.id) - placeOf(both, l.id, c.id))).toBeLessThan(1e-9);
            positions += 1;
          }
        }
      }),
    );
    // The generator makes parts that can be laid out, and most have cut-outs.
    expect(legs).toBeGreaterThan(200);
    expect(positions).toBeGreaterThan(100);
  });

  it('run to the outside apex up to a right angle, and to the tangent of the outer curve beyond it', () => {
    for (const [angle, beyond] of [[60, 5 * Math.tan(Math.PI / 6)], [90, 5], [120, 5], [180, 5]] as const) {
      expect(setback('outside', (angle * Math.PI) / 180, 3, 2)).toBeCloseTo(beyond, 12);
      const both = mustDraw({ thickness: 2, rule: { kind: 'fixedK', k: 0.4 }, legs: [leg('a', 40, 'outside', 20), leg('b', 30, 'outside', 20, { bend: bend(0, angle, 'up', 3) })] });
      const ends = path(both.section, 'a length arrows').runs.map((run) => run.segments[0]?.from.x ?? NaN).toSorted((p, q) => p - q);
      expect(ends[0]).toBeCloseTo(0, 9);
      expect(ends[1]).toBeCloseTo(40, 9);
      if (angle > 90) {
        const outer = path(both.section, 'b bend outline').runs[0]?.segments[0];
        expect(outer?.kind === 'arc' ? outer.centre.x + outer.radius : NaN).toBeCloseTo(40, 9);
      }
    }
  });

  it('carry the figure as typed, the word of the basis and the path of the field', () => {
    const { section } = mustDraw(STRAP);
    const said = texts(section).filter((t) => t.role === 'dimension text').map((t) => [t.text, t.suffix ?? '', t.field]);
    expect(said).toEqual(expect.arrayContaining([
      ['26', 'outside', 'parts.test.legs.foot.length'],
      ['18', 'CL', 'parts.test.legs.crank.length'],
      ['112', 'outside', 'parts.test.legs.peg.length'],
      ['12', 'inside', 'parts.test.legs.lip.length'],
      ['8', '', 'parts.test.legs.foot.cutouts.foothole.along.distance'],
      ['7.5', '', 'parts.test.legs.peg.cutouts.pegs.along.distance'],
      ['6 × 15 = 90', '', 'parts.test.legs.peg.cutouts.pegs.pattern.pitch'],
    ]));
    expect(said).toHaveLength(7);
    expect(measured(section, 'peg pegs row')).toBeCloseTo(90, 9);
    expect(texts(section).filter((t) => t.role === 'bend text').map((t) => [t.text, t.field])).toEqual([
      ['45° up', 'parts.test.legs.crank.bend.angle'],
      ['45° down', 'parts.test.legs.peg.bend.angle'],
      ['90° up', 'parts.test.legs.lip.bend.angle'],
    ]);
    expect(texts(section).filter((t) => t.role === 'leg letter').map((t) => t.text)).toEqual(['A', 'B', 'C', 'D']);
    expect(texts(section).filter((t) => t.role === 'bend number').map((t) => t.text)).toEqual(['1', '2', '3']);
  });

  it('never stand on their head', () => {
    fc.assert(
      fc.property(workablePart, (part) => {
        const both = drawn(part);
        if (!both) return;
        for (const t of texts(both.section)) {
          expect(t.rotation).toBeGreaterThan(-Math.PI / 2 - 1e-6);
          expect(t.rotation).toBeLessThan(Math.PI / 2 + 1e-6);
        }
      }),
    );
  });
});

describe('the metal of the section', () => {
  it('joins: each bend arc begins and ends where the faces of its legs do', () => {
    const { section } = mustDraw(STRAP);
    const points = section.entities.flatMap((e) => (e.kind === 'path' && e.role === 'outline' ? e.runs.flatMap((run) => [run.segments[0]?.from, run.segments.at(-1)?.to]) : []));
    // Two free ends are drawn within a run; every loose end, four to a bend, meets exactly one other.
    const loose = points.filter((p) => p !== undefined);
    expect(loose).toHaveLength(3 * 4 * 2);
    for (const p of loose) expect(loose.filter((q) => Math.hypot(p.x - q.x, p.y - q.y) < 1e-9)).toHaveLength(2);
  });

  it('is hatched at an angle off every edge of the leg, clear of the holes', () => {
    fc.assert(
      fc.property(workablePart, (part) => {
        const both = drawn(part);
        if (!both) return;
        for (const l of part.legs) {
          const area = path(both.section, `${l.id} area`).runs[0]?.segments ?? [];
          const edges = area.map((s) => Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x));
          for (const run of path(both.section, `${l.id} hatch`).runs) {
            const s = run.segments[0];
            if (!s || Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) < 1e-3) continue;
            const angle = Math.atan2(s.to.y - s.from.y, s.to.x - s.from.x);
            for (const edge of edges) expect(lineAngle(angle, edge)).toBeGreaterThan(degreesOf(7));
          }
        }
      }),
    );
  });

  it('stops its hatching at an opening', () => {
    const { section } = mustDraw({ thickness: 2, rule: { kind: 'fixedK', k: 0.4 }, legs: [leg('a', 60, 'outside', 20, { cutouts: [hole('h', 10, 'start', 20), hole('side', 10, 'start', 26)] })] });
    const inside = path(section, 'a hatch').runs.flatMap((run) => run.segments).filter((s) => Math.max(s.from.x, s.to.x) > 15 + 1e-9 && Math.min(s.from.x, s.to.x) < 31 - 1e-9);
    expect(inside).toHaveLength(0);
    expect(path(section, 'a hatch').runs.length).toBeGreaterThan(20);
    expect(path(section, 'a h hole edge').runs.map((run) => run.segments[0]?.from.x)).toEqual([15, 25]);
  });

  it('leaves side lugs out', () => {
    const { section } = mustDraw({ thickness: 1, rule: { kind: 'fixedK', k: 0.4 }, legs: [
      leg('base', 60, 'outside', 20),
      leg('lug', 15, 'outside', 12, { bend: { ...bend(0, 90, 'up'), edge: 'left', seat: { along: { from: 'middle', basis: 'outside', distance: 0 }, basis: 'straight', relief: { kind: 'none' } } } }),
    ] });
    expect(section.entities.filter((e) => e.key.includes('lug') || (e.pick && e.pick.leg === 'lug'))).toEqual([]);
  });
});

function degreesOf(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
