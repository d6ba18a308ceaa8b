import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendFigures } from '../../../src/core/bending/bendFigures';
import type { AllowanceRule, MeasuredDeduction } from '../../../src/core/bending/types';
import { between, degrees, isPlainSentence, problemOf, rowOfK, valueOf } from './workable';

const T = 1;
const measured = (rows: readonly MeasuredDeduction[]): AllowanceRule => ({ kind: 'measured', rows });

/** A full table, three radii by four angles, each cell with a K of its own. */
const tableOf = (ks: readonly number[]): readonly MeasuredDeduction[] =>
  [1, 2, 4].flatMap((radius, i) => [30, 60, 90, 120].map((turn, j) => rowOfK(degrees(turn), radius, T, ks[4 * i + j] ?? 0.4)));
const table = fc.array(between(0.3, 0.5), { minLength: 12, maxLength: 12 }).map(tableOf);
const SAME_MM = 1e-9; // Two routes to one length; see src/core/geometry/tolerance.ts.

describe('K from measured deductions', () => {
  it('gives every measured bend its own deduction back, in whatever order the rows stand', () => {
    fc.assert(
      fc.property(table, fc.array(fc.nat(), { minLength: 12, maxLength: 12 }), (rows, order) => {
        const shuffled = rows.map((row, i) => ({ row, at: order[i] ?? 0 })).toSorted((a, b) => a.at - b.at).map(({ row }) => row);
        for (const row of rows) {
          const figures = valueOf(bendFigures(measured(shuffled), row.turn, row.radius, T));
          expect(Math.abs(figures.deduction - row.deduction)).toBeLessThan(SAME_MM);
        }
      }),
    );
  });

  it('is linear in the radius at one angle', () => {
    fc.assert(
      fc.property(table, between(0, 1), (rows, share) => {
        const at = (radius: number): number => valueOf(bendFigures(measured(rows), degrees(75), radius, T)).deduction;
        expect(Math.abs(at(2 + 2 * share) - (at(2) + share * (at(4) - at(2))))).toBeLessThan(SAME_MM);
      }),
    );
  });

  it('finds at every angle and radius between the deduction of a K that never changes', () => {
    fc.assert(
      fc.property(between(0.2, 0.6), between(degrees(30), degrees(120)), between(1, 4), (k, turn, radius) => {
        const figures = valueOf(bendFigures(measured(tableOf(Array.from({ length: 12 }, () => k))), turn, radius, T));
        expect(Math.abs(figures.k - k)).toBeLessThan(1e-12);
      }),
    );
  });

  it('does not draw a straight line between deductions over the angle: 0.84 mm at 60°, not 1.07 mm', () => {
    const rows = [rowOfK(degrees(30), 1, T, 0.4), rowOfK(degrees(90), 1, T, 0.4)];
    const straight = ((rows[0]?.deduction ?? NaN) + (rows[1]?.deduction ?? NaN)) / 2;
    expect(straight).toBeCloseTo(1.07, 2);
    expect(valueOf(bendFigures(measured(rows), degrees(60), 1, T)).deduction).toBeCloseTo(0.843, 3);
  });

  it('interpolates first over the angle, then over the radius', () => {
    // Radius 1 measured at 45° and 90°, radius 2 at 30° and 90°: at 60° K is a third of the way up at one and half way at the other.
    const rows = [rowOfK(degrees(45), 1, T, 0.3), rowOfK(degrees(90), 1, T, 0.45), rowOfK(degrees(30), 2, T, 0.4), rowOfK(degrees(90), 2, T, 0.5)];
    expect(valueOf(bendFigures(measured(rows), degrees(60), 1.25, T)).k).toBeCloseTo(0.75 * 0.35 + 0.25 * 0.45, 12);
  });

  it('uses the thickness of the stock: the same deductions in thinner metal mean another K', () => {
    const rows = [rowOfK(degrees(90), 1, 1, 0.4)];
    const thin = valueOf(bendFigures(measured(rows), degrees(90), 1, 0.9));
    expect(Math.abs(thin.deduction - (rows[0]?.deduction ?? NaN))).toBeLessThan(SAME_MM);
    expect(Math.abs(thin.k - 0.4)).toBeGreaterThan(0.05);
  });

  it('takes a row written twice alike', () => {
    const row = rowOfK(degrees(90), 1, T, 0.4);
    expect(valueOf(bendFigures(measured([row, row]), degrees(90), 1, T)).k).toBeCloseTo(0.4, 12);
  });
});

describe('what a measured table refuses', () => {
  const full = tableOf([]);
  const one = [rowOfK(degrees(90), 1, T, 0.4)];
  const refusal = (rows: readonly MeasuredDeduction[], turnDegrees: number, radius: number) => {
    const problem = problemOf(bendFigures(measured(rows), degrees(turnDegrees), radius, T));
    expect(isPlainSentence(problem.says)).toBe(true);
    return problem;
  };

  it('an empty table', () => expect(refusal([], 90, 1).field).toBe('rule.rows'));

  it.each([
    [90, 0.9, 'radius', ['0.9 mm', 'from 1 mm to 4 mm'], 0.1],
    [90, 4.5, 'radius', ['4.5 mm', 'from 1 mm to 4 mm'], 0.5],
    [29, 2, 'turn', ['29°', 'at 2 mm', '30° to 120°'], degrees(1)],
    [125, 3, 'turn', ['125°', 'at 2 mm', '30° to 120°'], degrees(5)],
  ] as const)('extrapolation: %s° at %s mm', (turn, radius, field, words, amount) => {
    const problem = refusal(full, turn, radius);
    expect(problem.field).toBe(field);
    for (const word of words) expect(problem.says).toContain(word);
    expect(problem.amount).toBeCloseTo(amount, 9);
  });

  it('anything but the one radius and the one angle measured', () => {
    expect(refusal(one, 90, 1.01)).toMatchObject({ field: 'radius' });
    expect(refusal(one, 90, 1.01).says).toContain('only at 1 mm');
    expect(refusal(one, 91, 1)).toMatchObject({ field: 'turn' });
    expect(refusal(one, 91, 1).says).toContain('only 90°');
    expect(bendFigures(measured(one), degrees(90) + 0.9e-6, 1 - 0.9e-6, T).ok).toBe(true);
    expect(bendFigures(measured(one), degrees(90) + 1.1e-6, 1, T).ok).toBe(false);
    expect(bendFigures(measured(one), degrees(90), 1 + 1.1e-6, T).ok).toBe(false);
  });

  it('an angle that one of the two neighbouring radii lacks', () => {
    const problem = refusal([...full, rowOfK(degrees(90), 3, T, 0.4)], 60, 2.5);
    expect(problem.field).toBe('turn');
    expect(problem.says).toContain('at 3 mm inside radius only 90°');
  });

  it('rows that contradict each other, naming both', () => {
    const rows = [...full, { ...rowOfK(degrees(60), 2, T, 0.4), deduction: 1.5 }];
    const problem = refusal(rows, 90, 1);
    expect(problem.field).toBe('rule.rows.12.deduction');
    expect(problem.says).toContain('Rows 6 and 13');
  });

  it('a deduction that puts the neutral line far outside the metal, naming the row and what could be right', () => {
    const good = rowOfK(degrees(90), 1, T, 0.4);
    for (const deduction of [9, -9, 2.5 + 4 - Math.PI]) {
      const problem = refusal([good, { turn: degrees(60), radius: 1, deduction }], 90, 1);
      expect(problem.field).toBe('rule.rows.1.deduction');
      expect(problem.says).toContain('Row 2');
      const [, least, most] = /Between (-?[\d.]+) mm and (-?[\d.]+) mm/.exec(problem.says) ?? [];
      for (const inside of [Number(least) + 0.001, Number(most) - 0.001]) {
        expect(bendFigures(measured([good, { turn: degrees(60), radius: 1, deduction: inside }]), degrees(90), 1, T).ok).toBe(true);
      }
      for (const outside of [Number(least) - 0.001, Number(most) + 0.001]) {
        expect(bendFigures(measured([good, { turn: degrees(60), radius: 1, deduction: outside }]), degrees(90), 1, T).ok).toBe(false);
      }
    }
  });

  it('a sharp bend whose deduction leaves it less than nothing', () => {
    // r = 0: both setbacks are 2 mm, so 2.1 mm deducted would be an allowance of −0.1 mm though K is only −0.06.
    expect(refusal([{ turn: degrees(90), radius: 0, deduction: 2.1 }], 90, 0).field).toBe('rule.rows.0.deduction');
    expect(bendFigures(measured([{ turn: degrees(90), radius: 0, deduction: 2 }]), degrees(90), 0, T).ok).toBe(true);
  });

  it.each([
    ['turn', 0], ['turn', 4], ['turn', NaN], ['radius', -1], ['radius', 1001], ['radius', NaN], ['deduction', NaN], ['deduction', Infinity],
  ] as const)('a row whose %s is %s', (field, value) => {
    const problem = refusal([full[0] ?? one[0]!, { ...full[1]!, [field]: value }], 30, 1);
    expect(problem.field).toBe(`rule.rows.1.${field}`);
    expect(problem.says).toContain('Row 2');
  });
});
