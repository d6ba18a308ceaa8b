/** What must be true of pages before they are written, whatever the file's form. */
import { bad, unreachable } from '../core/result';
import type { Problem } from '../core/result';
import type { Contour, Point, Segment } from '../core/geometry/types';
import type { Entity } from '../drawing/entities';
import type { Page } from '../drawing/page';

/** The largest sheet that a PDF can hold is 14 400 pt (ISO 32000-1, annex C, from memory). */
const LARGEST_MM = 5000;

const stands = (...values: readonly number[]): boolean => values.every((value) => Math.abs(value) <= LARGEST_MM * 2);
const pointStands = (p: Point): boolean => stands(p.x, p.y);
const segmentStands = (s: Segment): boolean => pointStands(s.from) && pointStands(s.to) && (s.kind === 'line' || (pointStands(s.centre) && Math.abs(s.sweep) <= 7));
const contourStands = (c: Contour): boolean => (c.kind === 'circle' ? pointStands(c.centre) && stands(c.radius) : c.segments.every(segmentStands));

function entityStands(entity: Entity): boolean {
  switch (entity.kind) {
    case 'path':
      return entity.runs.every((run) => run.segments.every(segmentStands));
    case 'contours':
      return entity.contours.every(contourStands);
    case 'text':
      return pointStands(entity.at) && Number.isFinite(entity.rotation);
    default:
      return unreachable(entity);
  }
}

/** The first thing that keeps pages from being written, with the page's name or the entity's key as its field; undefined where all is well. */
export function unwritablePage(pages: readonly Page[]): Problem | undefined {
  if (pages.length === 0) return bad('pages', 'There is nothing to print. Choose a part first.').problem;
  for (const page of pages) {
    const { width, height, stretch } = page;
    if (!(width > 0 && height > 0 && width <= LARGEST_MM && height <= LARGEST_MM)) {
      return bad(page.name, `A sheet of paper must be more than 0 and at most ${LARGEST_MM} mm wide and high.`).problem;
    }
    if (stretch && !(stretch.x > 0.5 && stretch.x < 2 && stretch.y > 0.5 && stretch.y < 2)) {
      return bad(page.name, 'The correction of this page is no likely figure. Measure the check bars again.').problem;
    }
    const fault = page.entities.find((entity) => !entityStands(entity));
    if (fault) return bad(fault.key, 'A place on this page is not a number or lies far off the sheet. Look at the sizes of the part.').problem;
  }
  return undefined;
}
