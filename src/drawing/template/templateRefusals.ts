/** What keeps a template from being printed, told before anything is drawn. */
import { bad } from '../../core/result';
import type { Problem } from '../../core/result';
import { MOST_STRETCH } from './correction';
import { frameOf } from './sheetFrame';
import type { TemplateSettings, TemplateSubject } from './types';

const MOST_COPIES = 500;
/** mm: the bars and the words beside them take this much, and parts some more. */
const LEAST_ROOM = { width: 164, height: 120 };
const FURTHEST_BORDER = 60;
/** Letters of the day: it stands on a line with the number of the sheet. */
const LONGEST_DATE = 30;
const MOST_GAP = 100;
const LEAST_OVERLAP = 2;
const MOST_OVERLAP = 60;

const between = (value: number, low: number, high: number): boolean => value >= low && value <= high;

/** The first fault of the settings or the subjects; undefined where all can be drawn. */
export function whyNoTemplate(subjects: readonly TemplateSubject[], settings: TemplateSettings): Problem | undefined {
  const { margins, correction, overlap, gap } = settings;
  const edges = [margins.side, margins.top, margins.bottom];
  if (!edges.every((edge) => between(edge, 0, FURTHEST_BORDER))) return bad('margins', `The border on which the printer cannot print must be 0 to ${FURTHEST_BORDER} mm wide.`).problem;
  if (![correction.x, correction.y].every((f) => between(f, 1 - MOST_STRETCH, 1 + MOST_STRETCH))) {
    return bad('correction', 'The correction must stretch the page by no more than 7 in 100. Measure the check bars again.').problem;
  }
  if (!between(gap, 0, MOST_GAP)) return bad('gap', `The gap between parts must be 0 to ${MOST_GAP} mm.`).problem;
  if (!between(overlap, LEAST_OVERLAP, MOST_OVERLAP)) return bad('overlap', `Tiles must overlap by ${LEAST_OVERLAP} to ${MOST_OVERLAP} mm.`).problem;
  if (settings.date.length > LONGEST_DATE) return bad('date', `The day takes ${settings.date.length} letters. There is room for ${LONGEST_DATE}: write it in figures.`).problem;
  const work = frameOf(settings, settings.turn === 'lying').work;
  if (work.maxX - work.minX < LEAST_ROOM.width || work.maxY - work.minY < LEAST_ROOM.height) {
    return bad('margins', `Inside these borders ${settings.paper} has too little room for the check bars and a part. Take narrower borders or larger paper.`).problem;
  }
  if (subjects.length === 0) return bad('subjects', 'There is nothing to print. Choose at least one part.').problem;
  let total = 0;
  for (const [i, subject] of subjects.entries()) {
    const { copies, name, blank } = subject;
    if (!Number.isInteger(copies) || copies < 1) return bad(`subjects.${i}.copies`, `${name}: the number of copies must be a whole number from 1.`).problem;
    total += copies;
    const { minX, minY, maxX, maxY } = blank.bounds;
    if (blank.outline.length === 0 || ![maxX - minX, maxY - minY].every((s) => s > 0 && s < 1e5)) {
      return bad(`subjects.${i}.blank`, `${name} has no outline that can be drawn. Look at the lengths and widths of its legs.`).problem;
    }
  }
  return total > MOST_COPIES ? bad('subjects', `${total} copies are too many for one print. Print at most ${MOST_COPIES} at once.`, total).problem : undefined;
}
