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

/** Tables without which nothing can be set. */
const NEEDED = ['cmap', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp'];

/**
 * Whether a file begins as TrueType and has all that it says it has: the library tells no one of a file that breaks off.
 * Source: OpenType specification, table directory (from memory).
 */
function isWhole(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || view.getUint32(0) !== 0x00010000) return false;
  const count = view.getUint16(4);
  if (bytes.length < 12 + 16 * count) return false;
  const names = new Set(Array.from({ length: count }, (_, i) => {
    const at = 12 + 16 * i;
    const fits = view.getUint32(at + 8) + view.getUint32(at + 12) <= bytes.length;
    return fits ? String.fromCharCode(...bytes.subarray(at, at + 4)) : '';
  }));
  return !names.has('') && NEEDED.every((name) => names.has(name));
}

function load(doc: jsPDF, fonts: PdfFonts): Result<undefined> {
  for (const face of ['regular', 'bold'] as const) {
    if (!isWhole(fonts[face])) return bad(`fonts.${face}`, 'The lettering could not be read: it must be a whole TrueType file. Load the page again.');
    doc.addFileToVFS(`${face}.ttf`, binary(fonts[face]));
    doc.addFont(`${face}.ttf`, FAMILY[face], 'normal');
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
