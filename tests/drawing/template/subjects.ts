/** Subjects and settings for the tests of templates. */
import { layOut } from '../../../src/core/part/layOut';
import type { Part } from '../../../src/core/part/types';
import { unfold } from '../../../src/core/part/unfold';
import { SAFE_MARGINS } from '../../../src/drawing/template/paperSizes';
import type { TemplateSettings, TemplateSubject } from '../../../src/drawing/template/types';
import { exampleJob } from '../../../src/job/exampleJob';
import type { Job } from '../../../src/job/schema';
import { workOut } from '../../../src/job/workOut';

export const settings = (more: Partial<TemplateSettings> = {}): TemplateSettings => ({
  paper: 'A4',
  turn: 'auto',
  margins: SAFE_MARGINS,
  correction: { x: 1, y: 1 },
  overlap: 10,
  gap: 6,
  date: '5 November 2026',
  length: (mm) => mm.toFixed(2),
  unit: 'mm',
  ...more,
});

/** A part of the example, or of a job like it. */
export function subject(id: string, more: Partial<TemplateSubject> = {}, job: Job = exampleJob): TemplateSubject {
  const part = job.parts.find((p) => p.id === id);
  const shape = part && workOut(job, id).shape;
  if (!part || !shape) throw new Error(`${id} cannot be drawn`);
  const stock = job.stocks.find((s) => s.id === part.stock)?.name ?? '';
  return { name: part.name, stockLine: stock, blank: shape.blank, layout: shape.layout, copies: 1, face: 'marked', ...more };
}

/** A subject of a part as numbers; undefined where it cannot be laid out. */
export function subjectOf(part: Part, more: Partial<TemplateSubject> = {}): TemplateSubject | undefined {
  const layout = layOut(part);
  return layout.ok ? { name: 'Vent stay', stockLine: 'Brass 1.6', blank: unfold(layout.value), layout: layout.value, copies: 1, face: 'marked', ...more } : undefined;
}

export const EXAMPLE = ['back-plate', 'strap', 'bracket', 'lever'] as const;

const withLeg = (partId: string, legId: string, change: Partial<Job['parts'][number]['legs'][number]>): Job => ({
  ...exampleJob,
  parts: exampleJob.parts.map((p) => (p.id === partId ? { ...p, legs: p.legs.map((l) => (l.id === legId ? { ...l, ...change } : l)) } : p)),
});

/** The front strap with a peg leg so long that its blank is 600 mm and more. */
export const longStrap = (more: Partial<TemplateSubject> = {}): TemplateSubject => subject('strap', more, withLeg('strap', 'peg-leg', { length: '540' }));

/** The back plate at 400 × 420 mm. */
export const largePlate = (more: Partial<TemplateSubject> = {}): TemplateSubject =>
  subject('back-plate', more, { ...exampleJob, sizes: exampleJob.sizes.map((s) => (s.id === 'plate-length' ? { ...s, text: '400' } : s.id === 'plate-height' ? { ...s, text: '420' } : s)) });
