/** What the random parts reach, and that a part spoilt in one field is refused by that field's name and never thrown over. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fold } from '../../../src/core/part/fold';
import { layOut } from '../../../src/core/part/layOut';
import { unfold } from '../../../src/core/part/unfold';
import type { Part } from '../../../src/core/part/types';
import { isPlainSentence } from '../bending/workable';
import { randomPart } from './randomParts';

/** Dotted paths of all numbers within, as problems name them. */
function numbersIn(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, path === '' ? key : `${path}.${key}`));
}

function withValue<Whole>(whole: Whole, path: string, value: unknown): Whole {
  const copy: unknown = structuredClone(whole);
  const steps = path.split('.');
  const last = steps.pop() ?? '';
  const holder = steps.reduce<unknown>((at, step) => (at as Record<string, unknown>)[step], copy) as Record<string, unknown>;
  holder[last] = value;
  return copy as Whole;
}

/** Every number within is finite, but for what `may` allows. */
function expectFinite(value: unknown, may: (path: string) => boolean = () => false, path = ''): void {
  if (typeof value === 'number' && !Number.isFinite(value) && !may(path)) throw new Error(`${path} is ${value}`);
  if (typeof value === 'object' && value !== null) for (const [key, inner] of Object.entries(value)) expectFinite(inner, may, `${path}.${key}`);
}

/** Values that no field of this kind can have. */
function hopeless(path: string): readonly number[] {
  const never = [NaN, Infinity, -Infinity, 1e308, -1e308];
  const key = path.split('.').at(-1) ?? '';
  if (path.endsWith('bend.parent')) return [...never, -1, 0.5];
  if (key === 'turn' && path.endsWith('bend.turn')) return [...never, 0, -1, (181 * Math.PI) / 180];
  if (key === 'turn') return never;
  if (path === 'rule.k') return [...never, -0.1, 1.1];
  if (['count', 'alongCount', 'acrossCount'].includes(key)) return [...never, 0, -1, 1.5];
  if (['distance', 'pitch', 'alongPitch', 'acrossPitch'].includes(key)) return never;
  if (key === 'corner' || key === 'size' || key === 'depth' || key === 'radius') return [...never, -1];
  return [...never, 0, -1, 1e-12];
}

/** Fields of the part that count for it: not a rule without bends, not a shape hidden by a bend, not a table of the measured rule. */
const counting = (part: Part): string[] =>
  numbersIn(part).filter((path) => !path.startsWith('rule.') || (path === 'rule.k' && part.legs.length > 1));

describe('random parts', () => {
  it('reach what is worth testing', () => {
    const parts = fc.sample(randomPart(), { numRuns: 1000, seed: 20261125 });
    const share = (holds: (part: Part) => boolean) => parts.filter(holds).length / parts.length;
    const anyLeg = (holds: (leg: Part['legs'][number]) => boolean) => share((part) => part.legs.some(holds));
    const reached = {
      valid: share((part) => layOut(part).ok),
      bends: share((part) => part.legs.length > 1),
      'twelve legs and more': share((part) => part.legs.length >= 12),
      'thirty legs and more': share((part) => part.legs.length >= 30),
      lugs: anyLeg((leg) => leg.bend !== undefined && leg.bend.edge !== 'end'),
      'lugs left': anyLeg((leg) => leg.bend?.edge === 'left'),
      'lugs right': anyLeg((leg) => leg.bend?.edge === 'right'),
      'lugs bent again': share((part) => part.legs.some((leg) => leg.bend !== undefined && part.legs[leg.bend.parent]?.bend?.seat !== undefined)),
      'square reliefs': anyLeg((leg) => leg.bend?.seat?.relief.kind === 'square'),
      'round reliefs': anyLeg((leg) => leg.bend?.seat?.relief.kind === 'round'),
      'inset lugs': anyLeg((leg) => leg.bend?.seat !== undefined && leg.bend.seat.basis !== 'straight'),
      tapers: anyLeg((leg) => Math.abs(leg.startWidth - leg.endWidth) > 0.1),
      'lugs on tapers': share((part) => part.legs.some((leg) => leg.bend?.seat !== undefined && part.legs[leg.bend.parent]?.startWidth !== part.legs[leg.bend.parent]?.endWidth)),
      'half turns': anyLeg((leg) => leg.bend?.turn === Math.PI),
      'above a right angle': anyLeg((leg) => leg.bend !== undefined && leg.bend.turn > Math.PI / 2 && leg.bend.turn < Math.PI),
      down: anyLeg((leg) => leg.bend?.way === 'down'),
      'round ends': anyLeg((leg) => leg.startShape.kind === 'round' || leg.endShape.kind === 'round'),
      'corner radii': anyLeg((leg) => leg.startShape.kind === 'radius' || leg.endShape.kind === 'radius'),
      chamfers: anyLeg((leg) => leg.startShape.kind === 'chamfer' || leg.endShape.kind === 'chamfer'),
      openings: anyLeg((leg) => leg.cutouts.length > 0),
      grids: anyLeg((leg) => leg.cutouts.some((c) => c.pattern.kind === 'grid')),
      'steps in width': share((part) => part.legs.some((leg) => leg.bend?.edge === 'end' && part.legs[leg.bend.parent]?.endWidth !== leg.startWidth)),
    };
    const least: Record<string, number> = { valid: 0.99, bends: 0.7, 'twelve legs and more': 0.2, 'thirty legs and more': 0.05 };
    expect(Object.entries(reached).filter(([what, found]) => found < (least[what] ?? 0.12))).toEqual([]);
    const rules = ['fixedK', 'din6935', 'handbook', 'aviation', 'measured'].map((rule) => share((part) => part.rule.kind === rule));
    expect(Math.min(...rules)).toBeGreaterThan(0.08);
  });

  it('are answered in finite numbers throughout', () => {
    fc.assert(
      fc.property(randomPart(), fc.double({ min: 0, max: 1 }), (part, share) => {
        const layout = layOut(part);
        if (!layout.ok) throw new Error('not laid out');
        expect(() => expectFinite([NaN])).toThrow('.0 is NaN');
        expectFinite(layout.value);
        expectFinite(unfold(layout.value));
        expectFinite(fold(layout.value));
        // A bend that is still flat has no radius: that alone is Infinity, by its definition.
        expectFinite(fold(layout.value, part.legs.map(() => share)), (path) => path.endsWith('radius'));
      }),
      { numRuns: 100 },
    );
  });
});

describe('a part spoilt in one field', () => {
  it('is refused by the name of that field, in a plain sentence: every field, every hopeless value', () => {
    const parts = fc.sample(randomPart({ legs: 4 }), { numRuns: 12, seed: 7 });
    const kinds = new Set<string>();
    const faults: string[] = [];
    for (const part of parts)
      for (const field of counting(part)) {
        kinds.add(field.replaceAll(/\d+/g, 'n'));
        for (const value of hopeless(field)) {
          const layout = layOut(withValue(part, field, value));
          const problems = layout.ok ? [] : layout.problems;
          if (!problems.some((p) => p.field === field)) faults.push(`${field} = ${value} is not named`);
          for (const { says, amount } of problems) {
            if (!isPlainSentence(says)) faults.push(`${field} = ${value}: ${says}`);
            if (amount !== undefined && !Number.isFinite(amount)) faults.push(`${field} = ${value}: amount ${amount}`);
          }
        }
      }
    expect(faults).toEqual([]);
    // Every kind of number that a part holds, but for those of rules other than fixed K.
    for (const kind of ['thickness', 'rule.k', 'legs.n.length', 'legs.n.startWidth', 'legs.n.endWidth', 'legs.n.startShape.radius', 'legs.n.endShape.radius', 'legs.n.startShape.size', 'legs.n.endShape.size'])
      expect(kinds).toContain(kind);
    for (const kind of ['parent', 'turn', 'radius', 'seat.along.distance', 'seat.relief.width', 'seat.relief.depth']) expect(kinds).toContain(`legs.n.bend.${kind}`);
    for (const kind of ['shape.diameter', 'shape.length', 'shape.width', 'shape.turn', 'shape.corner', 'along.distance', 'across.distance', 'pattern.count', 'pattern.pitch', 'pattern.alongCount', 'pattern.alongPitch', 'pattern.acrossCount', 'pattern.acrossPitch'])
      expect(kinds).toContain(`legs.n.cutouts.n.${kind}`);
  });

  it('is refused or answered in finite numbers, whatever the value', () => {
    fc.assert(
      fc.property(randomPart({ legs: 6 }), fc.nat(), fc.oneof(fc.double(), fc.constantFrom(0, -0, 5e-324, 1e-300, 1e-9, 9999.9, 10_000, 1e4, -1e4)), (part, which, value) => {
        const fields = numbersIn(part);
        const layout = layOut(withValue(part, fields[which % fields.length] ?? '', value));
        if (layout.ok) {
          expectFinite(layout.value.legs);
          expectFinite(layout.value.walked);
          expectFinite(unfold(layout.value));
          expectFinite(fold(layout.value));
        }
        expect((layout.ok ? [] : layout.problems).map((p) => p.says).filter((says) => !isPlainSentence(says))).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it('of radius nought is refused by DIN 6935, which has no K for it, at the radius', () => {
    fc.assert(
      fc.property(randomPart({ legs: 6, rule: 'din6935' }), fc.nat(), (part, which) => {
        const bent = part.legs.flatMap((leg, i) => (leg.bend ? [i] : []));
        const i = bent[which % bent.length];
        if (i === undefined) return;
        const layout = layOut(withValue(part, `legs.${i}.bend.radius`, 0));
        expect(layout.ok ? [] : layout.problems.map((p) => p.field)).toContain(`legs.${i}.bend.radius`);
      }),
      { numRuns: 100 },
    );
  });

  it('tells of every fault at once', () => {
    const [part] = fc.sample(randomPart({ legs: 3 }).filter((p) => p.legs.length === 3), { numRuns: 1, seed: 3 });
    if (!part) throw new Error('no part');
    const spoilt = withValue(withValue(withValue(part, 'thickness', NaN), 'legs.0.length', -1), 'legs.2.bend.turn', 4);
    const layout = layOut(spoilt);
    expect(layout.ok ? [] : layout.problems.map((p) => p.field)).toEqual(['thickness', 'legs.0.length', 'legs.2.bend.turn']);
  });
});
