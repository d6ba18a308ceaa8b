/** What a drawing needs to be told about the job: it knows no units and no entries. */
import type { Basis } from '../core/part/types';

export interface Words {
  /** Field path of the part: `parts.strap`. */
  readonly part: string;
  /** The figure of a field as a dimension shows it: as typed where that is a plain number, else worked out. Angles without °. */
  readonly say: (field: string) => string;
  /** A worked-out length, mm, as text. */
  readonly length: (mm: number) => string;
}

/** A whole or short decimal without the noughts that only fill its places: 90.00 is 90. Anything else stays as it is. */
export const short = (figure: string): string => (/^-?\d+\.\d*$/.test(figure) ? figure.replace(/\.?0+$/, '') : figure);

/** The word of a basis where there is little room. */
export const basisWord = (basis: Basis): string => (basis === 'centre line' ? 'CL' : basis);

/** A row as gaps × pitch = total, mm. */
export const rowText = (gaps: number, pitch: string, total: number, words: Words): string => `${gaps} × ${pitch} = ${short(words.length(total))}`;
