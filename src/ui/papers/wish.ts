/** The setting as typed, turned into what the drawing can be asked for. */
import type { Problem, Result } from '../../core/result';
import { evaluate, type Wanted } from '../../core/units/evaluate';
import { MM_PER_INCH } from '../../core/units/unitWords';
import type { PaperWish } from '../../drawing/papers/types';
import { correctionFrom, type Correction, type Measured } from '../../drawing/template/correction';
import type { Job } from '../../job/schema';
import type { Bar, PaperSetting } from './paperSetting';

const BARS = ['xMm', 'xIn', 'yMm', 'yIn'] as const satisfies readonly Bar[];

const read = (text: string, wanted: Wanted, plain: 'mm' | 'in' = 'mm'): Result<number> => evaluate(text, wanted, { plain, sizes: new Map(), scale: 1 });

/** The number typed; no number where it cannot be read, which is refused with the rest. */
const typed = (text: string, wanted: Wanted): number => {
  const value = read(text, wanted);
  return value.ok ? value.value : NaN;
};

export const copiesOf = (setting: PaperSetting, partId: string): string => setting.copies[partId] ?? '1';

/** Parts that are printed, in the order of the job. What was chosen in a job that is gone counts no more. */
export function chosenParts(setting: PaperSetting, job: Job, partInView: string): readonly string[] {
  const chosen = setting.chosen ?? [partInView];
  const there = job.parts.filter(({ id }) => chosen.includes(id)).map(({ id }) => id);
  return there.length > 0 || setting.chosen?.length === 0 ? there : [partInView];
}

/** The correction of the next print, from that of the last one and what its bars measured. `problem.field` names a bar. */
export function correctionOf({ inForce, measured }: Pick<PaperSetting, 'inForce' | 'measured'>): Result<Correction> {
  let values: Measured = {};
  for (const bar of BARS) {
    if (measured[bar].trim() === '') continue;
    const inch = bar.endsWith('In');
    const value = read(measured[bar], 'length', inch ? 'in' : 'mm');
    if (!value.ok) return { ok: false, problem: { ...value.problem, field: bar } };
    values = { ...values, [bar]: inch ? value.value / MM_PER_INCH : value.value };
  }
  return correctionFrom(values, inForce);
}

export interface Wished {
  readonly wish: PaperWish;
  /** What is wrong with the bars; the correction of the last print stays meanwhile. */
  readonly bars: Problem | undefined;
}

/** @param today `2026-11-05` */
export function wishOf(setting: PaperSetting, job: Job, partInView: string, today: string): Wished {
  const correction = correctionOf(setting);
  const { kind, face, paper, turn } = setting;
  return {
    wish: {
      kind,
      parts: chosenParts(setting, job, partInView).map((id) => ({ id, copies: typed(copiesOf(setting, id), 'count') })),
      face,
      paper,
      turn,
      overlap: typed(setting.overlap, 'length'),
      gap: typed(setting.gap, 'length'),
      correction: correction.ok ? correction.value : setting.inForce,
      date: today,
    },
    bars: correction.ok ? undefined : correction.problem,
  };
}

/** The day where the maker is, `2026-11-05`. */
export function dayOf(date: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
