/** Tables as CSV. Source of the form: RFC 4180. */

/** Text, a number, or nothing. A number that is not finite is written as nothing. */
export type CsvCell = string | number | undefined;

export interface CsvOptions {
  /** Begins the file with the mark by which spreadsheets know UTF-8. */
  readonly mark?: boolean;
}

const MARK = '\uFEFF';
/** Places of a number: a millionth of a mm is finer than anything here can be measured. */
const PLACES = 6;

/** A spreadsheet takes text that begins so for a formula and works it out; an apostrophe before it keeps it text. */
const FORMULA = /^[=+\-@\t\r]/;

function cell(value: CsvCell): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? plain(value) : '';
  const harmless = FORMULA.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** Without an exponent, without noughts that only fill its places, and without minus nought. */
function plain(value: number): string {
  const text = value.toFixed(PLACES).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** Rows of cells as a file: CRLF after every row, quotes where they are needed. The first row is the head. */
export const writeCsv = (rows: readonly (readonly CsvCell[])[], { mark = false }: CsvOptions = {}): string =>
  `${mark ? MARK : ''}${rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')}`;
