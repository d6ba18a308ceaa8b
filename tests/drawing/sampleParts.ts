/** Parts for the tests of the drawings: the strap of the visual guide, and workable parts at random. */
import fc from 'fast-check';
import { fold } from '../../src/core/part/fold';
import { layOut, type WalkableLayout } from '../../src/core/part/layOut';
import { unfold } from '../../src/core/part/unfold';
import type { Basis, Cutout, Leg, Part } from '../../src/core/part/types';
import { blankDrawing } from '../../src/drawing/blankDrawing';
import type { Drawing } from '../../src/drawing/entities';
import { sectionDrawing } from '../../src/drawing/sectionDrawing';
import type { Words } from '../../src/drawing/words';

export const degrees = (angle: number): number => (angle * Math.PI) / 180;

export function leg(id: string, length: number, basis: Basis, width: number, rest: Partial<Leg> = {}): Leg {
  const square = { kind: 'square' } as const;
  return { id, name: id, length, startBasis: basis, endBasis: basis, startWidth: width, endWidth: width, startShape: square, endShape: square, cutouts: [], ...rest };
}

export const bend = (parent: number, angle: number, way: 'up' | 'down', radius = 2): NonNullable<Leg['bend']> => ({ parent, edge: 'end', turn: degrees(angle), way, radius });

export const hole = (id: string, diameter: number, from: Cutout['along']['from'], distance: number, pattern: Cutout['pattern'] = { kind: 'single' }, across: Cutout['across'] = { from: 'centre', distance: 0 }): Cutout => ({
  id,
  name: id,
  shape: { kind: 'round', diameter },
  along: { from, basis: 'outside', distance },
  across,
  pattern,
});

/** The strap of the visual guide; its text and picture give the blank's length and running dimensions to two places. */
export const STRAP: Part = {
  thickness: 1.6,
  rule: { kind: 'fixedK', k: 0.414 },
  legs: [
    leg('foot', 26, 'outside', 16, { startShape: { kind: 'round' }, cutouts: [hole('foothole', 3.1, 'start', 8)] }),
    leg('crank', 18, 'centre line', 16, { bend: bend(0, 45, 'up') }),
    leg('peg', 112, 'outside', 16, { bend: bend(1, 45, 'down'), cutouts: [hole('pegs', 3.2, 'start', 7.5, { kind: 'row', direction: 'along', count: 7, pitch: 15 })] }),
    leg('lip', 12, 'inside', 16, { bend: bend(2, 90, 'up'), endShape: { kind: 'radius', radius: 2 } }),
  ],
};

/** Words as a job would give them: figures as typed, lengths to two places. */
export function wordsFor(part: Part): Words {
  return {
    part: 'parts.test',
    length: (mm) => mm.toFixed(2),
    say: (field) => {
      const [, , , legId, what, ...rest] = field.split('.');
      const own = part.legs.find((l) => l.id === legId);
      if (!own) return `no leg at ${field}`;
      if (what === 'length') return String(Number(own.length.toFixed(2)));
      if (what === 'bend') return String(Number((((own.bend?.turn ?? NaN) * 180) / Math.PI).toFixed(2)));
      const cutout = own.cutouts.find((c) => c.id === rest[0]);
      const value = rest[1] === 'along' ? cutout?.along.distance : (cutout?.pattern as unknown as Record<string, number> | undefined)?.[rest[2] ?? ''];
      return value === undefined ? `nothing at ${field}` : String(Number(value.toFixed(2)));
    },
  };
}

export interface Drawn {
  readonly layout: WalkableLayout;
  readonly section: Drawing;
  readonly blank: Drawing;
  readonly px: number;
}

/** Both drawings of a part; undefined where the part cannot be laid out. `acrossPx`: px that the blank's length is shown over. */
export function drawn(part: Part, acrossPx = 850): Drawn | undefined {
  const layout = layOut(part);
  if (!layout.ok) return undefined;
  const blank = unfold(layout.value);
  const px = (blank.bounds.maxX - blank.bounds.minX) / acrossPx;
  const words = wordsFor(part);
  return {
    layout: layout.value,
    px,
    section: sectionDrawing(layout.value, fold(layout.value), words, { px }),
    blank: blankDrawing(layout.value, blank, words, { px }),
  };
}

export function mustDraw(part: Part, acrossPx?: number): Drawn {
  const both = drawn(part, acrossPx);
  if (!both) throw new Error(`The part cannot be laid out: ${JSON.stringify(layOut(part))}`);
  return both;
}

const basis = fc.constantFrom<Basis>('outside', 'inside', 'centre line', 'straight');

const pattern = fc.oneof(
  fc.constant<Cutout['pattern']>({ kind: 'single' }),
  fc.record({ kind: fc.constant('row' as const), direction: fc.constantFrom('along' as const, 'across' as const), count: fc.integer({ min: 2, max: 6 }), pitch: fc.integer({ min: 4, max: 9 }) }),
  fc.record({ kind: fc.constant('grid' as const), alongCount: fc.integer({ min: 2, max: 5 }), alongPitch: fc.integer({ min: 4, max: 7 }), acrossCount: fc.integer({ min: 2, max: 3 }), acrossPitch: fc.integer({ min: 4, max: 6 }) }),
);

const cutout = (id: string): fc.Arbitrary<Cutout> =>
  fc.record({
    id: fc.constant(id),
    name: fc.constant(id),
    shape: fc.oneof(
      fc.record({ kind: fc.constant('round' as const), diameter: fc.integer({ min: 1, max: 4 }) }),
      fc.record({ kind: fc.constant('slot' as const), length: fc.integer({ min: 4, max: 6 }), width: fc.integer({ min: 1, max: 3 }), turn: fc.constantFrom(0, Math.PI / 2) }),
    ),
    along: fc.record({ from: fc.constantFrom('start' as const, 'middle' as const, 'end' as const), basis, distance: fc.integer({ min: 0, max: 12 }) }),
    across: fc.record({ from: fc.constantFrom('centre' as const, 'left' as const, 'right' as const), distance: fc.integer({ min: 0, max: 12 }) }),
    pattern,
  });

/** A chain of 1 to 12 legs that can be laid out: every leg is longer than two bends of its thickness and radius can take. */
export const workablePart: fc.Arbitrary<Part> = fc
  .record({
    thickness: fc.constantFrom(0.5, 1, 1.6, 3),
    radius: fc.constantFrom(0, 1, 2, 4),
    width: fc.integer({ min: 16, max: 40 }),
    legs: fc.array(
      fc.record({
        spare: fc.double({ min: 0.5, max: 60, noNaN: true }),
        basis,
        angle: fc.oneof(fc.integer({ min: 5, max: 180 }), fc.constantFrom(30, 45, 60, 90, 120, 180)),
        way: fc.constantFrom('up' as const, 'down' as const),
        cutouts: fc.tuple(cutout('h0'), cutout('h1'), fc.integer({ min: 0, max: 2 })).map(([a, b, n]) => [a, b].slice(0, n)),
      }),
      { minLength: 1, maxLength: 12 },
    ),
  })
  .map(({ thickness, radius, width, legs }) => ({
    thickness,
    rule: { kind: 'fixedK' as const, k: 0.42 },
    legs: legs.map((l, i) => leg(`l${i}`, 2 * (radius + thickness) + l.spare, l.basis, width, { cutouts: l.cutouts, ...(i > 0 ? { bend: bend(i - 1, l.angle, l.way, radius) } : {}) })),
  }));

/** The same with a tapering first leg and up to two side lugs on it. */
export const partWithLugs: fc.Arbitrary<Part> = fc
  .record({ part: workablePart, left: fc.boolean(), right: fc.boolean(), lug: fc.integer({ min: 10, max: 30 }), angle: fc.integer({ min: 20, max: 120 }) })
  .map(({ part, left, right, lug, angle }) => {
    const first = part.legs[0];
    if (!first) return part;
    const sides = [...(left ? ['left' as const] : []), ...(right ? ['right' as const] : [])];
    const lugs = sides.map((edge) => leg(`lug ${edge}`, lug + 12, 'outside', 10, {
      cutouts: [hole('eye', 3, 'end', 5)],
      bend: { parent: 0, edge, turn: degrees(angle), way: 'up', radius: 2, seat: { along: { from: 'middle', basis: 'straight', distance: 0 }, basis: 'straight', relief: { kind: 'none' } } },
    }));
    return { ...part, legs: [{ ...first, length: first.length + 30, cutouts: [] }, ...part.legs.slice(1), ...lugs] };
  });
