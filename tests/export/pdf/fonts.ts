import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PdfFonts } from '../../../src/export/pdf/pdfFonts';

const face = (name: string): Uint8Array => new Uint8Array(readFileSync(join(import.meta.dirname, '../../../node_modules/dejavu-fonts-ttf/ttf', name)));

/** The faces that the PDFs are set in. */
export const fonts: PdfFonts = { regular: face('DejaVuSansCondensed.ttf'), bold: face('DejaVuSansCondensed-Bold.ttf') };
