import * as fc from 'fast-check';
import type { EntryContext, SizeValue } from '../../../src/core/units/evaluate';

/** Sizes of the greenhouse's roof-vent peg stay, made up for these tests. */
export const SIZES: ReadonlyMap<string, SizeValue> = new Map<string, SizeValue>([
  ['thickness', { value: 1.6, dimension: 'length' }],
  ['radius', { value: 2, dimension: 'length' }],
  ['gap', { value: 10, dimension: 'length' }],
  ['pegs', { value: 6, dimension: 'number' }],
  ['rake', { value: Math.PI / 6, dimension: 'angle' }],
  ['größe', { value: 7, dimension: 'length' }],
  ['зазор', { value: 3, dimension: 'length' }],
]);

export const MM_JOB: EntryContext = { plain: 'mm', scale: 12, sizes: SIZES };
export const INCH_JOB: EntryContext = { ...MM_JOB, plain: 'in' };

const TOKENS = [
  '1', '3', '8', '12', '0', '.5', '5.', '1,5', '234', '½', '⅜', 'mm', 'in', '"', "'", 'ft', '°', 'rad', 'thou', 'gap', 'pegs', 'rake', 'gp',
  'full', 'sqrt', 'min', 'tan', '(', ')', '+', '-', '−', '*', '×', '/', '÷', ',', ';', ' ', ' ', '/8', '-1/2"', "1'", '^', '~', '\u0301', '\ud800', '#',
];

/** Texts made of pieces of good entries in any order. */
export const nearlyGood: fc.Arbitrary<string> = fc.array(fc.constantFrom(...TOKENS), { maxLength: 14 }).map((pieces) => pieces.join(''));

const literal = fc.constantFrom('1', '12', '3.25', '2,5', '.5', '½', '1½', '1 3/8', '3/8in', '1-3/8"', "1' 3-1/2\"", "2'-½\"", '20 mm', '2cm', '2ft', '15 thou', 'gap', 'pegs', 'thickness');
const joined = fc.constantFrom('+', ' + ', '-', ' - ', '*', ' × ', '/', ' ÷ ');

/** Entries built by the rules of the language: most can be worked out, some mix their units. */
export const { entry: builtEntry } = fc.letrec<{ entry: string }>((tie) => ({
  entry: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    literal,
    fc.tuple(tie('entry'), joined, tie('entry')).map((parts) => parts.join('')),
    tie('entry').map((inside) => `(${inside})`),
    tie('entry').map((inside) => `-(${inside})`),
    tie('entry').map((inside) => `full(${inside})`),
    fc.tuple(fc.constantFrom('min', 'max'), tie('entry'), tie('entry')).map(([name, a, b]) => `${name}(${a}; ${b})`),
  ),
}));
