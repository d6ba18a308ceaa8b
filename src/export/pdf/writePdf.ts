/**
 * Pages as PDF: vector lines, arcs as Bézier pieces, lettering as text in embedded fonts. Source of the form: ISO 32000-1 through jsPDF.
 */
import { jsPDF } from 'jspdf';
import { bad, good } from '../../core/result';
import type { Result } from '../../core/result';
import type { Point } from '../../core/geometry/types';
import type { Entity, TextEntity } from '../../drawing/entities';
import type { Page } from '../../drawing/page';
import { unwritablePage } from '../checkPages';
import { FILLS, isBold, PAPER_LINES } from '../paperLines';
import { runsOf, type Run } from '../paperRuns';
import { pdfFonts, type PdfFonts, type FaceName } from './pdfFonts';
import { setText } from '../paperText';

export interface PdfSettings {
  /** What the file is, such as the job's name. */
  readonly title: string;
  /** TrueType files, whole; only the letters in use go into the PDF. */
  readonly fonts: PdfFonts;
  /** `2026-11-05`: the same pages on the same day give the same bytes. */
  readonly date: string;
}

const POINTS_PER_MM = 72 / 25.4;
/** Bytes of a compressed file do not depend on the day; the id that PDF asks for is made from the title and the day. */
const ID_DIGITS = 32;

/** A file id from a text: the FNV-1a sum over it (from memory), four times with different beginnings. */
function fileId(text: string): string {
  const sum = (seed: number): string => {
    let hash = (0x811c9dc5 ^ seed) >>> 0;
    for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
    return hash.toString(16).padStart(8, '0');
  };
  return [0, 1, 2, 3].map(sum).join('').toUpperCase().slice(0, ID_DIGITS);
}

/** Writes one page; `at` takes a point of the page to points from the upper left corner, as the library counts. */
function paint(doc: jsPDF, page: Page): void {
  const stretch = page.stretch ?? { x: 1, y: 1 };
  const at = (p: Point): readonly [number, number] => [p.x * stretch.x * POINTS_PER_MM, (page.height - p.y * stretch.y) * POINTS_PER_MM];
  const trace = (run: Run): void => {
    doc.moveTo(...at(run.from));
    for (const step of run.steps) {
      if (step.kind === 'line') doc.lineTo(...at(step.to));
      else doc.curveTo(...at(step.control1), ...at(step.control2), ...at(step.to));
    }
    if (run.closed) doc.close();
  };
  for (const entity of page.entities) {
    if (entity.kind === 'text') write(doc, entity, at);
    else draw(doc, entity, trace);
  }
}

function draw(doc: jsPDF, entity: Exclude<Entity, TextEntity>, trace: (run: Run) => void): void {
  const { width, dash, fill } = PAPER_LINES[entity.role];
  const runs = runsOf(entity);
  if (runs.length === 0 || (width === 0 && !fill)) return;
  if (fill) {
    const [red, green, blue] = FILLS[fill];
    doc.setFillColor(red, green, blue);
  }
  if (width > 0) {
    doc.setLineWidth(width * POINTS_PER_MM);
    doc.setLineDashPattern((dash ?? []).map((length) => length * POINTS_PER_MM), 0);
  }
  for (const run of runs) trace(run);
  if (fill && width > 0) doc.fillStroke();
  else if (fill) doc.fill();
  else doc.stroke();
}

function write(doc: jsPDF, entity: TextEntity, at: (p: Point) => readonly [number, number]): void {
  for (const piece of setText(entity)) {
    const face: FaceName = isBold(piece.role) ? 'bold' : 'regular';
    const size = piece.size * POINTS_PER_MM;
    const text = pdfFonts.printable(doc, face, piece.text);
    doc.setFont(pdfFonts.family(face), 'normal');
    doc.setFontSize(size);
    const natural = doc.getTextWidth(text);
    const room = piece.width * POINTS_PER_MM;
    // The drawing kept this much room for it; a letter or two wider than reckoned must not run into its neighbour.
    const squeeze = natural > room ? room / natural : 1;
    const long = natural * squeeze;
    const back = piece.align === 'start' ? 0 : piece.align === 'middle' ? long / 2 : long;
    const [x, y] = at(piece.at);
    const [cos, sin] = [Math.cos(entity.rotation), Math.sin(entity.rotation)];
    doc.text(text, x - back * cos, y + back * sin, { angle: (entity.rotation * 180) / Math.PI, horizontalScale: squeeze, baseline: 'alphabetic' });
  }
}

/**
 * Pages as one PDF, each at its own size and true to scale. The same pages, title, fonts and day give the same bytes.
 * @returns the file, or what in the pages cannot be written
 */
export function writePdf(pages: readonly Page[], settings: PdfSettings): Result<Uint8Array> {
  const problem = unwritablePage(pages);
  if (problem) return { ok: false, problem };
  const day = /^(20[0-2]\d|203[0-7])-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/.exec(settings.date);
  if (!day) return bad('date', `"${settings.date}" is not a day. Give it as year, month and day, such as 2026-11-05.`);
  const size = (page: Page): [number, number] => [page.width * POINTS_PER_MM, page.height * POINTS_PER_MM];
  const way = (page: Page): 'l' | 'p' => (page.width > page.height ? 'l' : 'p');
  const first = pages[0] as Page;
  const doc = new jsPDF({ unit: 'pt', format: size(first), orientation: way(first), compress: true, floatPrecision: 6, putOnlyUsedFonts: true });
  doc.setCreationDate(`D:${day[1]}${day[2]}${day[3]}000000+00'00'`);
  doc.setFileId(fileId(`${settings.title} ${settings.date} ${pages.length}`));
  doc.setProperties({ title: settings.title, creator: 'Bendwright' });
  doc.viewerPreferences({ PrintScaling: 'None', PickTrayByPDFSize: true });
  const loaded = pdfFonts.load(doc, settings.fonts);
  if (!loaded.ok) return loaded;
  pages.forEach((page, i) => {
    if (i > 0) doc.addPage(size(page), way(page));
    doc.setLineCap('butt');
    doc.setLineJoin('round');
    doc.setDrawColor(0, 0, 0);
    doc.setTextColor(0, 0, 0);
    paint(doc, page);
  });
  return good(new Uint8Array(doc.output('arraybuffer')));
}
