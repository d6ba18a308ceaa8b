/** Everything that follows from one part of a job: numbers, layout, blank, bent part, checks, or what stands in the way. */
import { checkPart } from '../core/checks/checkPart';
import { fold } from '../core/part/fold';
import { layOut, type WalkableLayout } from '../core/part/layOut';
import { unfold } from '../core/part/unfold';
import { sayInUnits } from '../core/units/sayInUnits';
import type { Metal } from '../core/checks/metals';
import type { Blank, Finding, Folded } from '../core/part/layoutTypes';
import type { Part } from '../core/part/types';
import { jobField } from './partFields';
import { resolvePart, type ResolvedPart } from './resolve';
import type { Job } from './schema';

/** A field at fault: its path in the job and the sentence that stands under it. */
export interface FieldProblem {
  readonly field: string;
  readonly says: string;
}

/** The geometry of a part that can be drawn. */
export interface Shape {
  readonly layout: WalkableLayout;
  readonly blank: Blank;
  readonly folded: Folded;
}

export interface WorkedOut {
  readonly resolved: ResolvedPart;
  /** Undefined while a field is at fault. */
  readonly shape: Shape | undefined;
  readonly problems: readonly FieldProblem[];
  readonly findings: readonly Finding[];
}

/** Metal of a part's stock, as far as the checks know it. */
const metalOf = (job: Job, partId: string): Metal =>
  job.stocks.find((stock) => stock.id === job.parts.find((part) => part.id === partId)?.stock)?.metal ?? 'other';

/** Works out one part from scratch. The part's id must be in the job. */
export function workOut(job: Job, partId: string): WorkedOut {
  const resolved = resolvePart(job, partId);
  return resolved.part ? workOutAs(job, partId, resolved, resolved.part) : { resolved, shape: undefined, problems: told(job, resolved.problems), findings: [] };
}

/** Works a part out with other numbers than its entries give: sizes held while the stock changes. */
export function workOutAs(job: Job, partId: string, resolved: ResolvedPart, part: Part): WorkedOut {
  const laid = layOut(part);
  if (!laid.ok) {
    const problems = laid.problems.map(({ field, says }) => ({ field: jobField(job, partId, field), says }));
    return { resolved, shape: undefined, problems: told(job, [...resolved.problems, ...problems]), findings: [] };
  }
  const layout = laid.value;
  const blank = unfold(layout);
  const findings = checkPart(layout, blank, metalOf(job, partId));
  return { resolved, shape: { layout, blank, folded: fold(layout) }, problems: told(job, resolved.problems), findings: told(job, findings) };
}

/** Sentences in the unit that the job shows, each field's told once. */
function told<Said extends { readonly says: string; readonly field?: string }>(job: Job, said: readonly Said[]): readonly Said[] {
  const seen = new Set<string>();
  return said.flatMap((one) => {
    const says = sayInUnits(one.says, job.units);
    const key = `${one.field ?? ''} ${says}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return says === one.says ? [one] : [{ ...one, says }];
  });
}

/** Whether the part may go out: every field holds, and no check says stop. */
export const canGoOut = (worked: WorkedOut): boolean =>
  worked.shape !== undefined && worked.problems.length === 0 && !worked.findings.some((f) => f.level === 'stop');

/** All sentences that keep a part from going out. */
export const whyNot = (worked: WorkedOut): readonly string[] => [
  ...worked.problems.map((p) => p.says),
  ...worked.findings.filter((f) => f.level === 'stop').map((f) => f.says),
];
