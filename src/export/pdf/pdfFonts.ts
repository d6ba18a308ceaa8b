/** The two faces that a PDF is set in. Part names are written in any script, which the fonts built into PDF readers cannot do. */
import type { jsPDF } from 'jspdf';
import { bad, good } from '../../core/result';
import type { Result } from '../../core/result';

/** Whole TrueType files. The drawings reckon with DejaVu Sans Condensed; a wider face is squeezed into the room kept. */
export interface PdfFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export type FaceName = keyof PdfFonts;

/** Six capitals and a plus before the name say that a font is a part of the whole (ISO 32000-1, 9.6.4, from memory). */
const FAMILY: Readonly<Record<FaceName, string>> = { regular: 'BWSHTR+DejaVuSansCondensed', bold: 'BWSHTB+DejaVuSansCondensed-Bold' };

/** Printed for a letter that the font has not got. */
const NO_SUCH_LETTER = '\uFFFD';

function binary(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let i = 0; i < bytes.length; i += 8192) pieces.push(String.fromCharCode(...bytes.subarray(i, i + 8192)));
  return pieces.join('');
}

const isTrueType = (bytes: Uint8Array): boolean => bytes.length > 12 && bytes[0] === 0 && bytes[1] === 1 && bytes[2] === 0 && bytes[3] === 0;

function load(doc: jsPDF, fonts: PdfFonts): Result<undefined> {
  for (const face of ['regular', 'bold'] as const) {
    if (!isTrueType(fonts[face])) return bad(`fonts.${face}`, 'The lettering could not be read. It must be a TrueType file. Load the page again.');
    try {
      doc.addFileToVFS(`${face}.ttf`, binary(fonts[face]));
      doc.addFont(`${face}.ttf`, FAMILY[face], 'normal');
    } catch {
      return bad(`fonts.${face}`, 'The lettering could not be read: its file is damaged. Load the page again.');
    }
  }
  return good(undefined);
}

/** The library leaves off the rest of a text at a letter that the font has not got, so each such letter is replaced. */
function printable(doc: jsPDF, face: FaceName, text: string): string {
  doc.setFont(FAMILY[face], 'normal');
  const { codeMap } = (doc.getFont() as unknown as { metadata: { cmap: { unicode: { codeMap: Readonly<Record<number, number>> } } } }).metadata.cmap.unicode;
  return [...text].map((c) => (c.length === 1 && codeMap[c.charCodeAt(0)] ? c : NO_SUCH_LETTER)).join('');
}

export const pdfFonts = { load, printable, family: (face: FaceName): string => FAMILY[face] };
