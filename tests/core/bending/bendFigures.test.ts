import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendAllowance } from '../../../src/core/bending/bendAllowance';
import { bendFigures } from '../../../src/core/bending/bendFigures';
import { setback } from '../../../src/core/bending/setback';
import { between, degrees, formulaRule, isPlainSentence, problemOf, valueOf, workableBend } from './workable';

const SAME_MM = 1e-9; // Two routes to one length; see src/core/geometry/tolerance.ts.

describe('setback', () => {
  it('is 0 to the tangent line, and the faces keep their order: inside, centre line, outside', () => {
    fc.assert(
      fc.property(workableBend, ({ turn, radius, thickness }) => {
        const [straight, inside, centre, outside] = (['straight', 'inside', 'centre line', 'outside'] as const).map((basis) =>
          setback(basis, turn, radius, thickness),
        ) as [number, number, number, number];
        expect(straight).toBe(0);
        expect(inside).toBeGreaterThan(0);
        expect(outside).toBeGreaterThan(centre);
        expect(centre).toBeGreaterThan(inside);
        expect(Math.abs(outside + inside - 2 * centre)).toBeLessThan(SAME_MM);
      }),
    );
  });

  it('runs to the corner up to 90°: drawn out, the corner of 60° in r = 2, t = 1 stands √3 mm from the tangent line', () => {
    expect(setback('outside', degrees(60), 2, 1)).toBeCloseTo(Math.sqrt(3), 12);
    expect(setback('inside', degrees(60), 3, 1)).toBeCloseTo(Math.sqrt(3), 12);
    expect(setback('centre line', degrees(60), 2.5, 1)).toBeCloseTo(Math.sqrt(3), 12);
  });

  it('runs to the tangent square to the leg above 90°, whatever the angle', () => {
    fc.assert(
      fc.property(between(degrees(90.001), Math.PI), between(0, 20), between(0.1, 5), (turn, radius, thickness) => {
        expect(setback('outside', turn, radius, thickness)).toBe(radius + thickness);
        expect(setback('inside', turn, radius, thickness)).toBe(radius);
        expect(setback('centre line', turn, radius, thickness)).toBe(radius + thickness / 2);
      }),
    );
  });

  it('does not jump at 90°', () => {
    for (const basis of ['outside', 'inside', 'centre line'] as const) {
      const jump = setback(basis, Math.PI / 2 + 1e-12, 10, 2) - setback(basis, Math.PI / 2, 10, 2);
      expect(Math.abs(jump)).toBeLessThan(1e-9);
    }
  });
});

describe('bend figures', () => {
  it('agree with each other: allowance along the neutral line, deduction from both setbacks', () => {
    fc.assert(
      fc.property(formulaRule, workableBend, (rule, { turn, radius, thickness }) => {
        const figures = valueOf(bendFigures(rule, turn, radius, thickness));
        expect(figures).toMatchObject({ turn, radius });
        expect(figures.allowance).toBe(valueOf(bendAllowance(turn, radius, thickness, figures.k)));
        expect(Math.abs(figures.allowance - turn * (radius + figures.k * thickness))).toBeLessThan(SAME_MM);
        expect(figures.outsideSetback).toBe(setback('outside', turn, radius, thickness));
        expect(figures.insideSetback).toBe(setback('inside', turn, radius, thickness));
        expect(figures.centreLineSetback).toBe(setback('centre line', turn, radius, thickness));
        expect(figures.deduction).toBe(2 * figures.outsideSetback - figures.allowance);
      }),
    );
  });

  it('scale with the bend', () => {
    fc.assert(
      fc.property(formulaRule, workableBend, between(0.1, 1), (rule, { turn, radius, thickness }, scale) => {
        const full = valueOf(bendFigures(rule, turn, radius, thickness));
        const small = valueOf(bendFigures(rule, turn, radius * scale, thickness * scale));
        // r/t = 5 exactly may fall on either side of DIN's step after scaling; elsewhere only rounding is left.
        fc.pre(Math.abs(radius / thickness - 5) > 1e-9);
        expect(Math.abs(small.allowance - full.allowance * scale)).toBeLessThan(SAME_MM);
      }),
    );
  });

  it('run on smoothly through 90° under every rule', () => {
    fc.assert(
      fc.property(formulaRule, workableBend, (rule, { radius, thickness }) => {
        const before = valueOf(bendFigures(rule, Math.PI / 2, radius, thickness));
        const after = valueOf(bendFigures(rule, Math.PI / 2 + 1e-12, radius, thickness));
        expect(Math.abs(after.deduction - before.deduction)).toBeLessThan(1e-8); // 1e-12 rad swings up to 900 mm of arc
      }),
    );
  });

  it('jump by no more than DIN\'s 0.0005 at r/t = 5: 0.0004 mm in a right angle of 1 mm metal', () => {
    const below = valueOf(bendFigures({ kind: 'din6935' }, Math.PI / 2, 5, 1));
    const above = valueOf(bendFigures({ kind: 'din6935' }, Math.PI / 2, 5 * (1 + 1e-12), 1));
    expect(above.allowance - below.allowance).toBeCloseTo((Math.PI / 2) * 0.000515 / 2, 7);
  });
});

describe('bend allowance', () => {
  it('measures the mid-line arc of a half turn: π × 4 for r = 3, t = 2, K = 0.5', () => {
    expect(valueOf(bendAllowance(Math.PI, 3, 2, 0.5))).toBeCloseTo(12.566370614, 9);
  });

  it.each([-0.51, 1.51, NaN, Infinity])('refuses a K of %s', (k) => {
    const problem = problemOf(bendAllowance(1, 1, 1, k));
    expect(problem.field).toBe('k');
    expect(isPlainSentence(problem.says)).toBe(true);
  });

  it('refuses a K that would make it less than nothing, and says which would not', () => {
    const problem = problemOf(bendAllowance(1, 0.1, 1, -0.3));
    expect(problem).toMatchObject({ field: 'k' });
    expect(problem.says).toContain('K must be -0.1 or more');
    expect(problem.amount).toBeCloseTo(0.2, 12);
    expect(valueOf(bendAllowance(1, 0.1, 1, -0.1))).toBe(0);
  });
});
