/**
 * The units a number field reads, and the words that no size may be called.
 * Source: the inch is 25.4 mm exactly (international yard and pound agreement, 1959); a foot is 12 in, a thou 0.001 in.
 */

export type PlainUnit = 'mm' | 'in';

export interface Unit {
  readonly word: 'mm' | 'cm' | 'm' | 'in' | 'ft' | 'thou' | 'deg' | 'rad';
  readonly dimension: 'length' | 'angle';
  /** One of this unit is times / over in mm or rad. As two whole numbers 3/8 in comes out as 9.525 mm to the last figure. */
  readonly times: number;
  readonly over: number;
}

/** So many of a unit, in mm or rad. */
export const inUnit = (count: number, unit: Unit): number => (count * unit.times) / unit.over;

export const MM_PER_INCH = 25.4;
export const RAD_PER_DEGREE = Math.PI / 180;

const MM: Unit = { word: 'mm', dimension: 'length', times: 1, over: 1 };
const INCH: Unit = { word: 'in', dimension: 'length', times: 254, over: 10 };
const FOOT: Unit = { word: 'ft', dimension: 'length', times: 3048, over: 10 };
const DEGREE: Unit = { word: 'deg', dimension: 'angle', times: Math.PI, over: 180 };
const CENTIMETRE: Unit = { word: 'cm', dimension: 'length', times: 10, over: 1 };
const METRE: Unit = { word: 'm', dimension: 'length', times: 1000, over: 1 };
const THOU: Unit = { word: 'thou', dimension: 'length', times: 254, over: 10_000 };
const RADIAN: Unit = { word: 'rad', dimension: 'angle', times: 1, over: 1 };

const UNITS: ReadonlyMap<string, Unit> = new Map([
  ['mm', MM],
  ['cm', CENTIMETRE],
  ['m', METRE],
  ['in', INCH],
  ['inch', INCH],
  ['inches', INCH],
  ['ft', FOOT],
  ['foot', FOOT],
  ['feet', FOOT],
  ['thou', THOU],
  ['deg', DEGREE],
  ['degree', DEGREE],
  ['degrees', DEGREE],
  ['rad', RADIAN],
]);

/** Straight, typographic and prime marks, and the two signs that are often typed for the degree sign. */
const MARKS: ReadonlyMap<string, Unit> = new Map([
  ...[..."'′’‘ʹ"].map((mark): [string, Unit] => [mark, FOOT]),
  ...[...'"″”“ʺ'].map((mark): [string, Unit] => [mark, INCH]),
  ...[...'°º˚'].map((mark): [string, Unit] => [mark, DEGREE]),
]);

/** The unit for a word, in capitals or not; undefined where it is no unit. */
export const unitCalled = (word: string): Unit | undefined => UNITS.get(word.toLowerCase());

/** The unit for a foot, inch or degree mark. */
export const unitMarked = (mark: string): Unit | undefined => MARKS.get(mark);

/** What a plain number counts as where a length or an angle is wanted. */
export const PLAIN_UNITS: Readonly<Record<PlainUnit, Unit>> = { mm: MM, in: INCH };
export const PLAIN_ANGLE: Unit = DEGREE;

/** Two foot marks close together are an inch mark. */
export const DOUBLE_MARK: Unit = INCH;

export type FunctionName = 'min' | 'max' | 'abs' | 'sqrt' | 'sin' | 'cos' | 'tan';

const FUNCTIONS: readonly FunctionName[] = ['min', 'max', 'abs', 'sqrt', 'sin', 'cos', 'tan'];

export const FUNCTION_WORDS: readonly string[] = FUNCTIONS;

export const functionCalled = (word: string): FunctionName | undefined =>
  FUNCTIONS.find((name) => name === word.toLowerCase());

/** The prefix of a full-size dimension. */
export const isFullSizeMark = (word: string): boolean => word.toLowerCase() === 'full';

/** The sizes that every part has from its stock. */
export const GIVEN_SIZES = ['thickness', 'radius'] as const;

const LETTER = /^[\p{Lu}\p{Ll}\p{Lt}\p{Lo}]$/u;
const NAME_GOES_ON = /^[\p{Lu}\p{Ll}\p{Lt}\p{Lo}\p{M}0-9_]$/u;

/** A letter of any alphabet. The raised a and o (ª º) are letters to Unicode but marks to a reader. */
export const startsName = (character: string): boolean => LETTER.test(character) && character !== 'ª' && character !== 'º';

export const continuesName = (character: string): boolean =>
  NAME_GOES_ON.test(character) && character !== 'ª' && character !== 'º';

/** One spelling for a name: é typed as one character or as e and an accent is the same name. */
export const sameSpelling = (name: string): string => name.normalize('NFC');
