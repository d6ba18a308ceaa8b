import { evaluate } from '../../core/units/evaluate';
import { MM_PER_INCH } from '../../core/units/unitWords';
import { settingOf } from '../../job/stockSetting';
import type { Job } from '../../job/schema';

/** Half a millimetre, where the job's own step cannot be worked out. */
const USUAL_STEP = 0.5;

/** What a drag of a part snaps to, mm, and the plain unit in mm. */
export function dragStep(job: Job, partId: string): { readonly step: number; readonly unit: number } {
  const stock = job.stocks.find(({ id }) => id === job.parts.find((part) => part.id === partId)?.stock);
  const worked = evaluate(job.step.length, 'length', settingOf(job, stock).context);
  return { step: worked.ok && worked.value > 0 ? worked.value : USUAL_STEP, unit: job.units.plain === 'in' ? MM_PER_INCH : 1 };
}
