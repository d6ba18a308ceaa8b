import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendFigures } from '../../../src/core/bending/bendFigures';
import { developedByDeductions, developedByStraights } from '../../../src/core/bending/developedLength';
import { between, formulaRule, isPlainSentence, problemOf, valueOf, workableBend } from './workable';

/** A strip of 1 to 7 legs with bends of its own between them. */
const strip = fc
  .array(fc.record({ bend: workableBend, straight: between(0, 200) }), { minLength: 0, maxLength: 6 })
  .chain((bends) => fc.record({ bends: fc.constant(bends), rule: formulaRule, last: between(0, 200) }));

describe('developed length', () => {
  it('is the same by straights and by deductions', () => {
    fc.assert(
      fc.property(strip, ({ bends, rule, last }) => {
        const figures = bends.map(({ bend }) => valueOf(bendFigures(rule, bend.turn, bend.radius, bend.thickness)));
        const straights = [...bends.map(({ straight }) => straight), last];
        const outsides = straights.map(
          (straight, leg) => straight + (figures[leg - 1]?.outsideSetback ?? 0) + (figures[leg]?.outsideSetback ?? 0),
        );
        const byStraights = valueOf(developedByStraights(straights, figures.map(({ allowance }) => allowance)));
        const byDeductions = valueOf(developedByDeductions(outsides, figures.map(({ deduction }) => deduction)));
        expect(Math.abs(byStraights - byDeductions)).toBeLessThan(1e-8); // up to 25 m in all, a double steps by 4e-12 there
      }),
    );
  });

  it('of a flat strip is its length', () => {
    expect(valueOf(developedByStraights([123.4], []))).toBe(123.4);
    expect(valueOf(developedByDeductions([123.4], []))).toBe(123.4);
  });

  it('lets a deduction below 0 lengthen the blank', () => expect(valueOf(developedByDeductions([10, 10], [-0.5]))).toBe(20.5));

  it.each([
    [developedByStraights([], []), 'straights'],
    [developedByStraights([1, 2], []), 'allowances'],
    [developedByStraights([1, 2], [1, 1]), 'allowances'],
    [developedByStraights([1, -0.5], [1]), 'straights.1'],
    [developedByStraights([NaN, 1], [1]), 'straights.0'],
    [developedByStraights([1, 1, 1], [1, -1]), 'allowances.1'],
    [developedByStraights([1, 1], [Infinity]), 'allowances.0'],
    [developedByStraights([1.7e308, 1.7e308], [1]), 'straights'],
    [developedByDeductions([], []), 'outsides'],
    [developedByDeductions([1, 2], [1, 1]), 'deductions'],
    [developedByDeductions([1, -1], [1]), 'outsides.1'],
    [developedByDeductions([1, 1], [NaN]), 'deductions.0'],
    [developedByDeductions([1, 1], [2.5]), 'deductions'],
    [developedByDeductions([1.7e308, 1.7e308], [1]), 'outsides'],
    [developedByDeductions([1, 1, 1], [1.7e308, 1.7e308]), 'outsides'],
  ])('refuses what does not make a strip (%#)', (result, field) => {
    const problem = problemOf(result);
    expect(problem.field).toBe(field);
    expect(isPlainSentence(problem.says)).toBe(true);
  });

  it('says by how much a straight is short', () => {
    expect(problemOf(developedByStraights([1, -0.5], [1]))).toMatchObject({ amount: 0.5 });
    expect(problemOf(developedByDeductions([1, 1], [2.5]))).toMatchObject({ amount: 0.5 });
  });
});
