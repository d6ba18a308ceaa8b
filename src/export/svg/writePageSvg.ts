/** A page of paper as SVG at true size, to be looked at and printed: the same lines and places as the PDF. */
import { good } from '../../core/result';
import type { Result } from '../../core/result';
import type { Point } from '../../core/geometry/types';
import type { Entity, TextEntity } from '../../drawing/entities';
import type { Page } from '../../drawing/page';
import { unwritablePage } from '../checkPages';
import { formatReal } from '../formatReal';
import { FILLS, isBold, PAPER_LINES } from '../paperLines';
import { runsOf, type Run } from '../paperRuns';
import { setText } from '../paperText';
import { escapeXml } from './escapeXml';

/** Faces of the app, as the drawings reckon with them. */
const FAMILY = "'Atkinson Hyperlegible Next', Verdana, sans-serif";
const LETTERS = 'Besley, Georgia, serif';
/** A millionth of a mm. */
const PLACES = 6;

const real = (value: number): string => formatReal(value, PLACES).replace(/\.0$/, '');
const colour = (fill: keyof typeof FILLS): string => `#${FILLS[fill].map((part) => part.toString(16).padStart(2, '0')).join('')}`;

function shapes(entity: Exclude<Entity, TextEntity>, at: (p: Point) => string): string {
  const { width, dash, fill } = PAPER_LINES[entity.role];
  const runs = runsOf(entity);
  if (runs.length === 0 || (width === 0 && !fill)) return '';
  const trace = (run: Run): string =>
    `M${at(run.from)}${run.steps.map((s) => (s.kind === 'line' ? `L${at(s.to)}` : `C${at(s.control1)} ${at(s.control2)} ${at(s.to)}`)).join('')}${run.closed ? 'Z' : ''}`;
  const stroke = width > 0 ? ` stroke="#000000" stroke-width="${real(width)}"${dash ? ` stroke-dasharray="${dash.map(real).join(' ')}"` : ''}` : '';
  return `<path class="${entity.role.replaceAll(' ', '-')}" fill="${fill ? colour(fill) : 'none'}"${stroke} d="${runs.map(trace).join('')}"/>`;
}

function words(entity: TextEntity, at: (p: Point) => string): string {
  const turn = (-entity.rotation * 180) / Math.PI;
  return setText(entity)
    .map(({ role, text, at: place, align, size }) => {
      const where = at(place);
      const [x, y] = where.split(' ');
      const turned = turn === 0 ? '' : ` transform="rotate(${real(turn)} ${where})"`;
      const family = role === 'leg letter' ? LETTERS : FAMILY;
      return `<text class="${role.replaceAll(' ', '-')}" x="${x}" y="${y}" font-family="${family}" font-size="${real(size)}" font-weight="${isBold(role) ? 700 : 400}" text-anchor="${align}"${turned}>${escapeXml(text)}</text>`;
    })
    .join('');
}

/**
 * One page as SVG in mm: one user unit is 1 mm of paper, corrections of the printer included. Lettering is text in the app's faces.
 * @returns the text of the file, or what on the page cannot be written
 */
export function writePageSvg(page: Page): Result<string> {
  const problem = unwritablePage([page]);
  if (problem) return { ok: false, problem };
  const { width, height, stretch = { x: 1, y: 1 } } = page;
  const at = (p: Point): string => `${real(p.x * stretch.x)} ${real(height - p.y * stretch.y)}`;
  const body = page.entities.map((entity) => (entity.kind === 'text' ? words(entity, at) : shapes(entity, at))).filter((s) => s !== '');
  return good(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${real(width)}mm" height="${real(height)}mm" viewBox="0 0 ${real(width)} ${real(height)}" stroke-linejoin="round" font-variant-numeric="tabular-nums lining-nums">\n` +
      `<title>${escapeXml(page.name)}</title>\n${body.join('\n')}\n</svg>\n`,
  );
}
