import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, type Wanted } from '../../../src/core/units/evaluate';
import { builtEntry, INCH_JOB, MM_JOB, nearlyGood } from './entries';

/**
 * The inch is 25.4 mm exactly: international yard and pound agreement, 1959. Every length below is worked out by hand from it.
 * Sums are held to 1e-12 of the value, the rounding of a few operations on doubles.
 */
const close = (value: number, wanted: number): boolean => Math.abs(value - wanted) <= 1e-12 * Math.max(1, Math.abs(wanted));

const LENGTHS_IN_MM_JOB: readonly (readonly [string, number])[] = [
  ['12.5', 12.5], ['12,5', 12.5], ['0,125', 0.125], ['.5', 0.5], ['5.', 5], ['  7 ', 7], ['+4', 4], ['-0', 0],
  ['3/8in', 9.525], ['3/8"', 9.525], ['3/8 in', 9.525], ['3/8 IN', 9.525], ['3⁄8″', 9.525], ['⅜"', 9.525], ['2 inches', 50.8], ["2''", 50.8],
  ['1 3/8in', 34.925], ['1-3/8"', 34.925], ['1-3/8 in', 34.925], ['1½in', 38.1], ['1 ½ in', 38.1], ['1-½"', 38.1], ['-1 3/8in', -34.925],
  ['1\' 3-1/2"', 393.7], ['1\'3 1/2"', 393.7], ['1\'-3 1/2"', 393.7], ['1\'-3-1/2"', 393.7], ['1′ 3½″', 393.7], ['1’ 3½”', 393.7], ['1ft 3in', 381], ['1ft3in', 381],
  ['1\'-3"', 381], ['1\' - 3"', 228.6], ['-1\' 3"', -381], ['1\' 3/8"', 314.325], ['1 1/2\'', 457.2], ['1-1/2 ft', 457.2], ['2 * 1\' 3"', 762], ['2ft-30mm', 579.6],
  ['20 mm', 20], ['20mm', 20], ['2cm', 20], ['0.1m', 100], ['12 thou', 0.3048], ['(2+1/4)in', 57.15],
  ['3-1/2', 2.5], ['3 - 1/2 mm', 2.5], ['3-1/2 mm', 2.5], ['3 - 1/2"', -9.7], ['3/4', 0.75], ['1 3/8', 1.375], ['½', 0.5], ['100/8 mm', 12.5], ['5 - 1-1/2"', -33.1],
  ['gap + 2*thickness', 13.2], ['12 + gap', 22], ['gap + 1in', 35.4], ['2 * (gap - 1 mm)', 18], ['gap*3', 30], ['gap/gap', 1], ['gap/4', 2.5], ['pegs mm', 6], ['pegs * gap', 60],
  ['größe + зазор', 10], ['gro\u0308ße', 7], ['2×3', 6], ['2·3', 6], ['6÷4', 1.5], ['5 − 7', -2], ['--3', 3], ['2*-3', -6], ['2+3*4', 14], ['(2+3)*4', 20], ['12/3/2', 2], ['10-4-3', 3],
  ['full 3\' 6"', 88.9], ['full(3\' 6" + 2in)', 1117.6 / 12], ['full 42', 3.5], ['FULL 24 mm + 1', 3], ['full 2ft/2', 25.4], ['-full 12', -1],
  ['min(3; gap)', 3], ['max(3, gap)', 10], ['min(1in, 30, gap*2)', 20], ['abs(3 - gap)', 7], ['sqrt(9)', 3], ['sqrt(3*3 + 4*4)', 5], ['sqrt(3mm*3mm + 4mm*4mm)', 5], ['sqrt(1,44)', 1.2],
  ['gap*sin(30)', 5], ['gap*sin(rake)', 5], ['gap*cos(60°)', 5], ['gap*tan(45 deg)', 10], ['gap*cos(0.5 rad)', 8.775825618903728],
  ['1000000', 1e6], ['min((1,5); 2)', 1.5],
];

const OTHERS: readonly (readonly [string, Wanted, number])[] = [
  ['45°', 'angle', Math.PI / 4], ['45 deg', 'angle', Math.PI / 4], ['45', 'angle', Math.PI / 4], ['45º', 'angle', Math.PI / 4], ['0.5 rad', 'angle', 0.5], ['90° - 22.5', 'angle', (67.5 * Math.PI) / 180],
  ['180/4', 'angle', Math.PI / 4], ['1/2°', 'angle', Math.PI / 360], ['rake*2', 'angle', Math.PI / 3], ['max(30; rake)', 'angle', Math.PI / 6],
  ['0.44', 'number', 0.44], ['1/3', 'number', 1 / 3], ['1in/1mm', 'number', 25.4], ['rake/15°', 'number', 2], ['gap/2mm', 'number', 5], ['pegs - 1', 'number', 5],
  ['6', 'count', 6], ['0', 'count', 0], ['pegs*2', 'count', 12], ['0.3mm/0.1mm', 'count', 3], ['-0', 'count', 0],
];

describe('entries that are read', () => {
  it.each(LENGTHS_IN_MM_JOB)('%s is %f mm', (text, wanted) => {
    const result = evaluate(text, 'length', MM_JOB);
    if (!result.ok) throw new Error(result.problem.says);
    expect(result.value).toSatisfy((value: number) => close(value, wanted));
    expect(Object.is(result.value, -0)).toBe(false);
  });

  it.each(OTHERS)('%s as %s is %f', (text, wanted, value) => {
    const result = evaluate(text, wanted, MM_JOB);
    if (!result.ok) throw new Error(result.problem.says);
    expect(result.value).toSatisfy((got: number) => close(got, value));
    expect(Object.is(result.value, -0)).toBe(false);
  });

  it.each([['1', 25.4], ['3/8', 9.525], ['12 + gap', 314.8], ['1 3/8', 34.925], ['3 - 1/2 mm', 75.7], ['max(1; gap)', 25.4], ['gap*2', 20], ['full 12', 25.4], ['7 mm', 7]])(
    'in an inch job %s is %f mm',
    (text, wanted) => {
      const result = evaluate(text, 'length', INCH_JOB);
      expect(result.ok && close(result.value, wanted)).toBe(true);
    },
  );

  it('the comparison refuses a figure that is out by a millionth of a millimetre', () => {
    expect(close(9.525001, 9.525)).toBe(false);
  });
});

/** The whole sentence: what stands on the screen beside the field. */
const REFUSED: readonly (readonly [string, Wanted, string])[] = [
  ['', 'length', 'Type a length, such as 12.5, 3/8in or gap + 2*thickness.'],
  ['  ', 'angle', 'Type an angle, such as 45, 22.5° or 0.5 rad.'],
  ['', 'number', 'Type a number, such as 0.44 or 1/3.'],
  ['', 'count', 'Type a whole number, such as 6.'],
  ['3/8in + gp', 'length', '"3/8in + gp": there is no size called gp. Did you mean gap?'],
  ['lever', 'length', '"lever": there is no size called lever.'],
  ['constructor', 'length', '"constructor": there is no size called constructor.'],
  ['Gap', 'length', '"Gap": there is no size called Gap. Did you mean gap?'],
  ['1 234.5', 'length', '"1 234.5": 1 234.5 has a space in it. If it is one number, write 1234.5.'],
  ['1,234', 'length', '"1,234": 1,234 could be 1234 or 1.234. Write the one you mean.'],
  ['1,234.5', 'length', '"1,234.5": leave the commas out of a long number: 1234.5.'],
  ['1.2.3', 'length', '"1.2.3": 1.2.3 has more than one decimal point or comma. Write it with one, such as 12.5.'],
  [',5', 'length', '",5": write a nought before the comma: 0,5.'],
  ['.', 'length', '".": there is a point without a number. Write 0.5 or 12.'],
  ['12 5', 'length', '"12 5": two numbers stand side by side, 12 and 5. Put +, -, * or / between them.'],
  ['12, 5', 'length', '"12, 5": 12, 5 is two numbers. For a decimal write 12.5; values in a row belong in min( ) or max( ).'],
  ['1 9/8 in', 'length', '"1 9/8 in": the fraction after 1 is one or more. Write 1 + 9/8 if that is meant.'],
  ['2gap', 'length', '"2gap": put +, -, * or / between 2 and gap.'],
  ['2(3+1)', 'length', '"2(3+1)": two things stand side by side, 2 and (. Put +, -, * or / between them.'],
  ['gap gap', 'length', '"gap gap": put +, -, * or / between gap and gap.'],
  ['5 furlong', 'length', '"5 furlong": there is no unit called furlong. Lengths are read in mm, cm, m, in, ft and thou, angles in deg and rad.'],
  ['5 mil', 'length', '"5 mil": mil could be a thou or a millimetre. Write thou or mm.'],
  ['5 mm mm', 'length', '"5 mm mm": there are two units side by side, mm and mm. Keep one.'],
  ['5 mm wide', 'length', '"5 mm wide": wide after mm means nothing here. Take it out.'],
  ['mm', 'length', '"mm": mm needs a number before it, such as 12 mm.'],
  ['2 x 3', 'length', '"2 x 3": for times write * or ×.'],
  ['1\' 3', 'length', '"1\' 3": 3 after 1\' needs an inch mark: 1\' 3".'],
  ['1\' -3"', 'length', '"1\' -3"": the hyphen could join or take away. Write 1\' 3" to join, or 1\' - 3 with spaces to take away.'],
  ['2ft-3', 'length', '"2ft-3": the hyphen could join or take away. Write 2ft 3" to join, or 2ft - 3 with spaces to take away.'],
  ['3 -1/2"', 'length', '"3 -1/2"": the hyphen could join or take away. Close it up to join (3-1/2") or put a space on both sides to take away (3 - 1/2").'],
  ['gap/3/8in', 'number', '"gap/3/8in": put brackets round 3/8in to divide by it.'],
  ['6/3/8in', 'length', '"6/3/8in": put brackets round 3/8in to divide by it.'],
  ['1/0', 'length', '"1/0": this divides by zero.'],
  ['3/0in', 'length', '"3/0in": this divides by zero.'],
  ['1 1/0 in', 'length', '"1 1/0 in": this divides by zero.'],
  ['gap/(gap-10)', 'number', '"gap/(gap-10)": this divides by zero: (gap-10) is 0.'],
  ['gap*gap', 'length', '"gap*gap": this comes out as an area and a length is wanted, such as 12.5 or 3/8in.'],
  ['1/gap', 'length', '"1/gap": this comes out as a mixture of units and a length is wanted, such as 12.5 or 3/8in.'],
  ['45°', 'length', '"45°": this comes out as an angle and a length is wanted, such as 12.5 or 3/8in.'],
  ['12 mm', 'angle', '"12 mm": this comes out as a length and an angle is wanted, such as 45 or 22.5°.'],
  ['gap', 'number', '"gap": this comes out as a length and a plain number is wanted, such as 0.44.'],
  ['gap', 'count', '"gap": this comes out as a length and a whole number is wanted, such as 6.'],
  ['gap + 45°', 'length', '"gap + 45°": gap is a length and 45° is an angle. Only two of one kind can be added.'],
  ['gap*gap - 4', 'length', '"gap*gap - 4": gap*gap is an area and 4 is a plain number. Only two of one kind can be taken one from the other.'],
  ['min(gap; 45°)', 'length', '"min(gap; 45°)": gap is a length and 45° is an angle. Only two of one kind can be compared.'],
  ['gap in', 'length', '"gap in": gap is already a length. Take the unit after it out.'],
  ['sin(gap)', 'number', '"sin(gap)": sin needs an angle, and gap is a length.'],
  ['sqrt(gap)', 'length', '"sqrt(gap)": sqrt needs a plain number or an area, and gap is a length.'],
  ['sqrt(3-4)', 'number', '"sqrt(3-4)": sqrt needs 0 or more, and 3-4 is below 0.'],
  ['tan(90)', 'number', '"tan(90)": tan has no value at 90°.'],
  ['min(1,2)', 'length', '"min(1,2)": inside min( ) and max( ) the comma in 1,2 could be a decimal comma or part two values. Write a point for decimals and ; between values.'],
  ['min(gap)', 'length', '"min(gap)": min needs two values or more, with ; between them: min(gap; 3).'],
  ['sqrt(4; 9)', 'number', '"sqrt(4; 9)": ; belongs only between the values of min( ) and max( ).'],
  ['sin 30', 'number', '"sin 30": sin needs brackets, such as sin(30).'],
  ['sqr(4)', 'number', '"sqr(4)": there is no function called sqr. Did you mean sqrt?'],
  ['log(4)', 'number', '"log(4)": there is no function called log. There are min, max, abs, sqrt, sin, cos, tan.'],
  ['(2+3', 'length', '"(2+3": a bracket is opened and not closed. Add ) where it ends.'],
  ['2+3)', 'length', '"2+3)": a bracket is closed that was never opened. Add ( where it begins, or take ) out.'],
  ['()', 'length', '"()": there is nothing between the brackets. Put a number or a size in them.'],
  ['gap +', 'length', '"gap +": there is nothing after +. Add a number or a size, or take + out.'],
  ['* 3', 'length', '"* 3": there is nothing before *. Add a number or a size.'],
  ['2 */ 3', 'length', '"2 */ 3": there is nothing between * and /. Add a number or a size, or take one out.'],
  ['gap^2', 'length', '"gap^2": there are no powers here. Write gap*gap for a square.'],
  ['~1 3/8', 'length', '"~1 3/8": ~ marks a rounded figure. Leave it out.'],
  ['12#', 'length', '"12#": the character # means nothing here. Take it out.'],
  ['full', 'length', '"full": full needs a length after it, such as full 3\' 6".'],
  ['full 45°', 'length', '"full 45°": full needs a length, and 45° is an angle.'],
  ['full (2 + full 3)', 'length', '"full (2 + full 3)": full stands twice for one dimension. Keep one.'],
  ['1001 m', 'length', '"1001 m": this comes to 1001000 mm. The most is 1000000 mm (1 km) either way.'],
  ['40000', 'angle', '"40000": this comes to 40000°. The most is 36000° either way.'],
  ['-2000000000', 'number', '"-2000000000": this comes to -2000000000. The most is 1000000000 either way.'],
  ['2000000', 'count', '"2000000": this comes to 2000000. The most is 1000000.'],
  ['2.5', 'count', '"2.5": this comes to 2.5 and a whole number is wanted, such as 3.'],
  ['-1', 'count', '"-1": this comes to -1. A count cannot be below 0.'],
  [`1${'0'.repeat(170)}*1${'0'.repeat(20)}*1`, 'number', '"1000000000000000000000000000000000000000…": this comes to 1e+190. The most is 1000000000 either way.'],
  [Array.from({ length: 4 }, () => '9'.repeat(45)).join('*'), 'number', '"9999999999999999999999999999999999999999…": this comes to 1e+180. The most is 1000000000 either way.'],
  ['('.repeat(10_000), 'length', '"((((((((((((((((((((((((((((((((((((((((…": this is 10000 characters long and the most is 200. Give part of it a name and use that.'],
  ['('.repeat(200), 'length', '"((((((((((((((((((((((((((((((((((((((((…": a bracket is opened and not closed. Add ) where it ends.'],
];

describe('entries that are refused', () => {
  it.each(REFUSED)('%s as %s', (text, wanted, says) => {
    expect(evaluate(text, wanted, MM_JOB)).toEqual({ ok: false, problem: { field: '', says } });
  });

  it('refuses a figure beyond what a double holds on the way', () => {
    const result = evaluate(`1${'0'.repeat(99)}*1${'0'.repeat(97)} / 1`, 'number', MM_JOB);
    expect(result.ok).toBe(false);
    const sizes = new Map(MM_JOB.sizes).set('huge', { value: 1e200, dimension: 'number' });
    const over = evaluate('huge*huge - huge*huge', 'number', { ...MM_JOB, sizes });
    expect(!over.ok && over.problem.says).toBe('"huge*huge - huge*huge": this comes to more than can be worked out. Use smaller figures.');
  });

  it('reads 66 brackets deep', () => {
    expect(evaluate(`${'('.repeat(66)}7${')'.repeat(66)}`, 'length', MM_JOB)).toEqual({ ok: true, value: 7 });
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses full where the scale is %f', (scale) => {
    const result = evaluate('full 3', 'length', { ...MM_JOB, scale });
    expect(!result.ok && result.problem.says).toBe('"full 3": full divides by the scale of the job, which is to be above 0. Set the scale first.');
  });

  it('refuses a size that was handed in without a value', () => {
    const sizes = new Map(MM_JOB.sizes).set('gap', { value: Number.NaN, dimension: 'length' });
    const result = evaluate('2*gap', 'length', { ...MM_JOB, sizes });
    expect(!result.ok && result.problem.says).toBe('"2*gap": gap has no value yet. Put its own text right first.');
  });
});

describe('whatever is typed', () => {
  const wanted = fc.constantFrom<Wanted>('length', 'angle', 'number', 'count');
  const sound = (text: string, field: Wanted): boolean => {
    const result = evaluate(text, field, MM_JOB);
    if (result.ok) return Number.isFinite(result.value) && !Object.is(result.value, -0) && (field !== 'count' || (Number.isInteger(result.value) && result.value >= 0));
    return /[.?]$/.test(result.problem.says) && !/NaN|Infinity|undefined|\n/.test(result.problem.says.replace(/^"[^\n]*?": /u, ''));
  };

  it('an arbitrary text gives a finite value or a sentence', () => {
    const outcome = fc.check(fc.property(fc.string({ unit: 'binary', maxLength: 220 }), wanted, sound), { numRuns: 2000 });
    expect(outcome.counterexample).toBeNull();
  });

  it('so does a text of good pieces in any order, and both answers come up', () => {
    let read = 0;
    let refused = 0;
    fc.assert(
      fc.property(nearlyGood, wanted, (text, field) => {
        if (evaluate(text, field, MM_JOB).ok) read += 1;
        else refused += 1;
        return sound(text, field);
      }),
      { numRuns: 10_000 },
    );
    expect(read).toBeGreaterThan(200);
    expect(refused).toBeGreaterThan(200);
  });

  it('so does an entry built by the rules, and half of them or more are lengths', () => {
    let read = 0;
    fc.assert(
      fc.property(builtEntry, (text) => {
        if (evaluate(text, 'length', MM_JOB).ok) read += 1;
        return sound(text, 'length');
      }),
      { numRuns: 3000 },
    );
    expect(read).toBeGreaterThan(1500);
  });

  it('brackets round a good entry change nothing', () => {
    fc.assert(
      fc.property(builtEntry, (text) => {
        const bare = evaluate(text, 'length', MM_JOB);
        fc.pre(bare.ok && text.length < 190);
        expect(evaluate(`(${text})`, 'length', MM_JOB)).toEqual(bare);
      }),
    );
  });
});
