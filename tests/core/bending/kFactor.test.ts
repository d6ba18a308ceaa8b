import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendFigures } from '../../../src/core/bending/bendFigures';
import { kFactor } from '../../../src/core/bending/kFactor';
import type { AllowanceRule } from '../../../src/core/bending/types';
import { between, degrees, formulaRule, isPlainSentence, problemOf, valueOf, workableBend } from './workable';

const DIN: AllowanceRule = { kind: 'din6935' };
const RIGHT_ANGLE = Math.PI / 2;

describe('K by formula', () => {
  it('answers every workable bend with a K inside the believed band', () => {
    fc.assert(
      fc.property(formulaRule, workableBend, (rule, { turn, radius, thickness }) => {
        const k = valueOf(kFactor(rule, turn, radius, thickness));
        expect(k).toBeGreaterThanOrEqual(-0.5);
        expect(k).toBeLessThanOrEqual(1.5);
      }),
    );
  });

  it('does not depend on the angle', () => {
    fc.assert(
      fc.property(formulaRule, workableBend, between(0.1, Math.PI), (rule, { turn, radius, thickness }, other) => {
        expect(kFactor(rule, turn, radius, thickness)).toEqual(kFactor(rule, other, radius, thickness));
      }),
    );
  });

  it('hands a fixed K through, 0 and 1 included', () => {
    for (const k of [0, 0.33, 0.5, 1]) expect(valueOf(kFactor({ kind: 'fixedK', k }, 1, 2, 1))).toBe(k);
  });

  it('grows with r/t under DIN 6935 and stays at one half beyond r/t = 5', () => {
    fc.assert(
      fc.property(between(0.1, 4.9), between(0.001, 0.1), (ratio, more) => {
        expect(valueOf(kFactor(DIN, 1, ratio + more, 1))).toBeGreaterThan(valueOf(kFactor(DIN, 1, ratio, 1)));
      }),
    );
    for (const ratio of [5.001, 6, 50, 1000]) expect(valueOf(kFactor(DIN, 1, ratio, 1))).toBe(0.5);
  });

  it('steps by 0.0005 in k, half of that in K, at r/t = 5', () => {
    const step = valueOf(kFactor(DIN, 1, 5 * (1 + 1e-12), 1)) - valueOf(kFactor(DIN, 1, 5, 1));
    expect(Math.abs(2 * step - 0.000515)).toBeLessThan(1e-6); // 1 − (0.65 + ½ log10 5)
  });

  it('refuses under DIN 6935 a radius so tight that k would be 0, and names one that works', () => {
    fc.assert(
      fc.property(between(0.05, 50), between(0, 0.0501), (thickness, ratio) => {
        const radius = ratio * thickness;
        const { field, says, amount } = problemOf(kFactor(DIN, 1, radius, thickness));
        expect(field).toBe('radius');
        expect(isPlainSentence(says)).toBe(true);
        const named = Number(/radius ([\d.e-]+) mm or more/.exec(says)?.[1]);
        expect(valueOf(kFactor(DIN, 1, named, thickness))).toBeGreaterThan(0);
        expect(named).toBeLessThan(0.052 * thickness);
        expect(Math.abs(radius + (amount ?? 0) - named)).toBeLessThan(1e-9);
      }),
    );
  });

  it('gives harder metal the larger allowance', () => {
    const [soft, half, hard] = (['soft', 'half-hard', 'hard'] as const).map((metal) => valueOf(kFactor({ kind: 'handbook', metal }, 1, 2, 1)));
    expect(soft).toBeLessThan(half ?? NaN);
    expect(half).toBeLessThan(hard ?? NaN);
  });

  it.each([{ kind: 'handbook', metal: 'soft' }, { kind: 'aviation' }] as const)(
    'refuses a bend so wide that the rounding of π outweighs the metal: $kind',
    (rule) => {
      const { field, says, amount } = problemOf(kFactor(rule, 1, 1000, 0.3));
      expect(field).toBe('radius');
      expect(isPlainSentence(says)).toBe(true);
      expect(kFactor(rule, 1, 1000 - (amount ?? 0) - 0.001, 0.3).ok).toBe(true);
    },
  );
});

describe('one size spoilt', () => {
  const spoilt = {
    thickness: [0, -1, 50.001, NaN, Infinity, -Infinity],
    radius: [-0.001, 1000.001, NaN, Infinity, -Infinity],
    turn: [0, -1, Math.PI + 1e-9, 180, NaN, Infinity, -Infinity],
  } as const;
  const oneSpoilt = fc.constantFrom(...(['thickness', 'radius', 'turn'] as const).flatMap((field) => spoilt[field].map((value) => ({ field, value }))));

  it('is refused in a plain sentence that names it, under every rule', () => {
    const met = new Set<string>();
    fc.assert(
      fc.property(formulaRule, workableBend, oneSpoilt, (rule, bend, { field, value }) => {
        const bent: typeof bend = { ...bend, [field]: value };
        const problem = problemOf(bendFigures(rule, bent.turn, bent.radius, bent.thickness));
        expect(problem.field).toBe(field);
        expect(isPlainSentence(problem.says)).toBe(true);
        met.add(`${field} ${value}`);
      }),
      { numRuns: 500 },
    );
    expect(met.size).toBe(18);
  });

  it.each([-0.001, 1.001, NaN, Infinity, -Infinity])('refuses a fixed K of %s', (k) => {
    const problem = problemOf(bendFigures({ kind: 'fixedK', k }, RIGHT_ANGLE, 1, 1));
    expect(problem.field).toBe('rule.k');
    expect(isPlainSentence(problem.says)).toBe(true);
  });

  it('takes the limits themselves', () => {
    for (const [turn, radius, thickness] of [[Math.PI, 1000, 50], [degrees(180), 0, 50], [1e-6, 0, 0.01]] as const) {
      expect(bendFigures({ kind: 'fixedK', k: 0.4 }, turn, radius, thickness).ok).toBe(true);
    }
  });

  it('never lets NaN or Infinity out, whatever goes in', () => {
    const any = fc.oneof(fc.double(), fc.constantFrom(0, -0, 5e-324, 1e-300, 1.7e308, NaN, Infinity), between(0, 3));
    const anyRule = fc.oneof(
      formulaRule,
      any.map((k) => ({ kind: 'fixedK' as const, k })),
      fc.array(fc.record({ turn: any, radius: any, deduction: any }), { maxLength: 4 }).map((rows) => ({ kind: 'measured' as const, rows })),
    );
    let answered = 0;
    fc.assert(
      fc.property(anyRule, any, any, any, (rule, turn, radius, thickness) => {
        const result = bendFigures(rule, turn, radius, thickness);
        if (result.ok) answered += 1;
        const out = result.ok ? Object.values(result.value) : [result.problem.amount ?? 0];
        expect(out.every(Number.isFinite)).toBe(true);
        expect(result.ok || isPlainSentence(result.problem.says)).toBe(true);
      }),
      { numRuns: 5000 },
    );
    expect(answered).toBeGreaterThan(100);
  });
});
