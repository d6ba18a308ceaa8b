/** Cases that went wrong once, or lie right on a limit. */
import { describe, expect, it } from 'vitest';
import { fold } from '../../../src/core/part/fold';
import { layOut } from '../../../src/core/part/layOut';
import { unfold } from '../../../src/core/part/unfold';
import { pointAlong } from '../../../src/core/geometry/splitSegment';
import type { Bend, EndShape, Leg, Part, Relief } from '../../../src/core/part/types';
import type { ClosedPath } from '../../../src/core/geometry/types';
import { laidOut } from './laidOut';
import { greenArea } from './measure';

const SQUARE: EndShape = { kind: 'square' };
const leg = (length: number, width: number, more: Partial<Leg> = {}): Leg => ({
  id: 'leg',
  name: '',
  length,
  startBasis: 'outside',
  endBasis: 'outside',
  startWidth: width,
  endWidth: width,
  startShape: SQUARE,
  endShape: SQUARE,
  cutouts: [],
  ...more,
});
const right = Math.PI / 2;
const upright = (parent: number, more: Partial<Bend> = {}): Bend => ({ parent, edge: 'end', turn: right, way: 'up', radius: 2, ...more });
const partOf = (...legs: Leg[]): Part => ({ thickness: 1.6, rule: { kind: 'fixedK', k: 0.5 }, legs });

/** A plate 60 × 30 with a lug on its left edge. */
const lugged = (near: number, width: number, relief: Relief, plate: Partial<Leg> = {}, basis: 'outside' | 'straight' = 'outside'): Part =>
  partOf(
    leg(60, 30, plate),
    leg(20, width, { bend: upright(0, { edge: 'left', seat: { along: { from: 'start', basis: 'outside', distance: near }, basis, relief } }) }),
  );

const fieldsOf = (part: Part): readonly string[] => {
  const layout = layOut(part);
  return layout.ok ? [] : layout.problems.map((p) => p.field);
};

const doublesBack = (path: ClosedPath): boolean =>
  path.some((b, i) => {
    const a = path.at(i - 1);
    if (a?.kind !== 'line' || b.kind !== 'line') return false;
    const ux = a.to.x - a.from.x;
    const uy = a.to.y - a.from.y;
    const vx = b.to.x - b.from.x;
    const vy = b.to.y - b.from.y;
    return ux * vx + uy * vy < 0 && Math.abs(ux * vy - uy * vx) < 1e-6;
  });

describe('a free end', () => {
  it('takes a corner radius of exactly half its width', () => {
    for (const width of [3, 8, 10, 10.3, 25.4]) {
      const blank = unfold(laidOut(partOf(leg(60, width, { startShape: { kind: 'radius', radius: width / 2 }, endShape: { kind: 'chamfer', size: width / 2 } }))));
      expect(blank.area).toBeCloseTo(60 * width - (1 - Math.PI / 4) * 2 * (width / 2) ** 2 - (width / 2) ** 2, 9);
      expect(blank.outline.every((s) => Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) > 1e-9)).toBe(true);
    }
  });

  it('may be two half rounds that meet: a disc', () => {
    const blank = unfold(laidOut(partOf(leg(12, 12, { startShape: { kind: 'round' }, endShape: { kind: 'round' } }))));
    expect(blank.area).toBeCloseTo(36 * Math.PI, 9);
    expect(blank.bounds).toEqual({ minX: 0, minY: 0, maxX: 12, maxY: 12 });
  });

  it('is refused where two rounds of unlike width lie one within the other', () => {
    expect(fieldsOf(partOf(leg(20, 20, { endWidth: 6, startShape: { kind: 'round' }, endShape: { kind: 'round' } })))).toEqual(['legs.0.startWidth']);
  });
});

describe('a leg of exactly its setbacks', () => {
  it('has no flat left, and is not refused for a rounding', () => {
    // Of these sums some come out a bit high, some a bit low.
    for (const turn of [0.3, 0.7, 1, 1.2, right])
      for (const next of [0.4, 0.9, 1.1, 1.3, 1.5]) {
        const reach = 3.6 * (Math.tan(turn / 2) + Math.tan(next / 2));
        const layout = laidOut(partOf(leg(30, 10), leg(reach, 10, { bend: upright(0, { turn }) }), leg(30, 10, { bend: upright(1, { turn: next }) })));
        expect(layout.legs[1]?.straight).toBe(0);
        // Its plan is its tangent line, out and back: no area, but bounds for whoever draws it.
        expect(greenArea(layout.legs[1]?.plan ?? [])).toBe(0);
        expect(layout.legs[1]?.plan).toHaveLength(2);
      }
    expect(fieldsOf(partOf(leg(30, 10), leg(7.199, 10, { bend: upright(0) }), leg(30, 10, { bend: upright(1) })))).toEqual(['legs.1.length']);
  });
});

describe('a part of nothing', () => {
  it('is refused: no flat, and bends that take up nothing', () => {
    const sharp = leg(1.6, 10, { bend: upright(0, { radius: 0 }) });
    expect(fieldsOf({ thickness: 1.6, rule: { kind: 'fixedK', k: 0 }, legs: [leg(1.6, 10), sharp] })).toEqual(['legs.0.length']);
    expect(fieldsOf({ thickness: 1.6, rule: { kind: 'fixedK', k: 0.1 }, legs: [leg(1.6, 10), sharp] })).toEqual([]);
  });
});

describe('a relief', () => {
  it('that reaches the free end of its leg leaves no sliver', () => {
    const relief: Relief = { kind: 'square', width: 2, depth: 1 };
    const blank = unfold(laidOut(lugged(2, 56, relief)));
    expect(doublesBack(blank.outline)).toBe(false);
    // Plate less the strip taken by the lug's bend and its reliefs, plus bend and lug.
    const inset = 3.6;
    expect(blank.area).toBeCloseTo(60 * 30 - 60 * inset - 4 * 1 + 56 * (right * 2.8 + 20 - 3.6), 9);
    for (const plan of blank.plans) expect(doublesBack(plan)).toBe(false);
  });

  it('with a round floor goes wholly beyond the tangent line', () => {
    expect(fieldsOf(lugged(20, 10, { kind: 'round', width: 4, depth: 1.5 }))).toEqual(['legs.1.bend.seat.relief.depth']);
    const blank = unfold(laidOut(lugged(20, 10, { kind: 'round', width: 4, depth: 2 })));
    expect(doublesBack(blank.outline)).toBe(false);
    expect(blank.area).toBeCloseTo(60 * 30 - 10 * 3.6 - 2 * (4 * 3.6 + 2 * Math.PI) + 10 * (right * 2.8 + 20 - 3.6), 9);
  });
});

describe('a lug along the whole edge, set in without reliefs', () => {
  it('takes the whole edge of a plain rectangle', () => {
    const blank = unfold(laidOut(lugged(0, 60, { kind: 'none' })));
    expect(blank.outline).toHaveLength(4);
    expect(blank.bounds.maxX).toBeCloseTo(60, 12);
    expect(blank.bounds.maxY).toBeCloseTo(30 - 3.6 + right * 2.8 + 20 - 3.6, 12);
  });

  it('is refused where that would cut the leg short or slit a bend', () => {
    const field = 'legs.1.bend.seat.relief';
    expect(fieldsOf(lugged(0, 60, { kind: 'none' }, { endWidth: 40 }))).toContain(field);
    expect(fieldsOf(lugged(3, 54, { kind: 'none' }, { startShape: { kind: 'radius', radius: 3 }, endShape: { kind: 'radius', radius: 3 } }))).toEqual([field]);
    const besideBend = lugged(0, 56.4, { kind: 'none' });
    expect(fieldsOf({ ...besideBend, legs: [...besideBend.legs, leg(20, 30, { bend: upright(0) })] })).toEqual([field]);
  });

  it('needs no relief beside a bend where it is not set in', () => {
    const besideBend = lugged(0, 56.4, { kind: 'none' }, {}, 'straight');
    expect(fieldsOf({ ...besideBend, legs: [...besideBend.legs, leg(20, 30, { bend: upright(0) })] })).toEqual([]);
  });
});

describe('neighbouring lugs', () => {
  const second = (part: Part, near: number): Part => {
    const lug = part.legs[1];
    if (!lug?.bend?.seat) throw new Error('no lug');
    return { ...part, legs: [...part.legs, { ...lug, bend: { ...lug.bend, seat: { ...lug.bend.seat, along: { ...lug.bend.seat.along, distance: near } } } }] };
  };

  it('are refused without a gap between them', () => {
    const bare = lugged(10, 20, { kind: 'none' }, {}, 'straight');
    expect(fieldsOf(second(bare, 30))).toEqual(['legs.2.bend.seat.along.distance']);
    expect(fieldsOf(second(bare, 25))).toEqual(['legs.2.bend.seat.along.distance']);
    expect(fieldsOf(second(bare, 30.5))).toEqual([]);
  });

  it('may share one notch where their reliefs meet', () => {
    const blank = unfold(laidOut(second(lugged(10, 15, { kind: 'square', width: 2, depth: 1 }), 29)));
    expect(doublesBack(blank.outline)).toBe(false);
    expect(blank.area).toBeCloseTo(60 * 30 - 30 * 3.6 - 8 * 4.6 + 2 * 15 * (right * 2.8 + 20 - 3.6), 9);
  });
});

describe('a relief on a sloping edge', () => {
  it('is refused where it would lean into the bend at the end of its leg', () => {
    const sloping = (near: number): Part => {
      const part = lugged(near, 20, { kind: 'square', width: 3, depth: 6 }, { endWidth: 10 });
      return { ...part, legs: [...part.legs, leg(20, 10, { bend: upright(0) })] };
    };
    expect(fieldsOf(sloping(3.2))).toEqual(['legs.1.bend.seat.along.distance']);
    expect(fieldsOf(sloping(6))).toEqual([]);
  });
});

describe('a sharp bend that takes up nothing', () => {
  it('leaves no gap in the outline', () => {
    const sharp: Part = {
      thickness: 1.6,
      rule: { kind: 'fixedK', k: 0 },
      legs: [
        leg(60, 30, { endWidth: 24.1 }),
        leg(20, 12, { bend: { ...upright(0, { radius: 0, edge: 'right' }), seat: { along: { from: 'start', basis: 'outside', distance: 17.3 }, basis: 'straight', relief: { kind: 'none' } } } }),
        leg(20, 24.1, { bend: upright(0, { radius: 0 }) }),
      ],
    };
    const blank = unfold(laidOut(sharp));
    blank.outline.forEach((segment, i) => expect(segment.from).toEqual(blank.outline.at(i - 1)?.to));
    expect(greenArea(blank.outline)).toBeCloseTo(blank.plans.reduce((sum, plan) => sum + greenArea(plan), 0), 9);
  });
});

describe('a slot turned on its leg', () => {
  it('points as it was turned, on the leg and with the leg on the blank', () => {
    const turn = Math.PI / 6;
    const slot = (id: string) =>
      ({ id, name: '', shape: { kind: 'slot', length: 9, width: 3, turn }, along: { from: 'middle', basis: 'straight', distance: 0 }, across: { from: 'centre', distance: 0 }, pattern: { kind: 'single' } }) as const;
    const part = lugged(20, 20, { kind: 'square', width: 2, depth: 1 }, { cutouts: [slot('a')] });
    const blank = unfold(laidOut({ ...part, legs: part.legs.map((l, i) => (i === 1 ? { ...l, cutouts: [slot('b')] } : l)) }));
    const headings = blank.cutouts.map(({ contour }) => {
      const side = contour.kind === 'path' ? contour.segments.find((s) => s.kind === 'line') : undefined;
      return side ? Math.atan2(side.to.y - side.from.y, side.to.x - side.from.x) : NaN;
    });
    // The lug on the left edge points to +y.
    expect(headings[0]).toBeCloseTo(turn, 12);
    expect(headings[1]).toBeCloseTo(right + turn, 12);
    expect(blank.cutouts.map((c) => c.heading)).toEqual([0, right]);
  });
});

describe('what is no number', () => {
  it('counts as a bend not yet begun', () => {
    const layout = laidOut(partOf(leg(30, 10), leg(30, 10, { bend: upright(0) })));
    expect(fold(layout, [1, NaN])).toEqual(fold(layout, [1, 0]));
    expect(fold(layout, [1, -1])).toEqual(fold(layout, [1, 0]));
    expect(fold(layout, [1, 7])).toEqual(fold(layout));
  });

  it('does not come from a segment of no length', () => {
    const at = { x: 3, y: 4 };
    expect(pointAlong({ kind: 'line', from: at, to: at }, 0)).toEqual(at);
  });
});
