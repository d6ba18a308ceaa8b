import { formatLength, unitWord, type LengthStyle } from './formatLength';

/** A figure with its mm, outside quotation marks: what is quoted was typed by the maker and stays as it is. */
const FIGURE_OR_QUOTE = /"[^"]*"|(-?\d+(?:\.\d+)?) mm\b/g;

/**
 * A sentence of the core, whose figures are in mm, with its figures in the unit that the maker reads: `4.41 mm` becomes
 * `0.174 in`. In millimetres it stays as it is.
 */
export const sayInUnits = (sentence: string, style: LengthStyle): string =>
  style.show === 'mm'
    ? sentence
    : sentence.replace(FIGURE_OR_QUOTE, (found, figure: string | undefined) => (figure === undefined ? found : `${formatLength(Number(figure), style)} ${unitWord(style)}`));
