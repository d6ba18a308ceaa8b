import { evaluate } from '../../core/units/evaluate';
import { bad, good, type Result } from '../../core/result';
import type { Job } from '../schema';
import { settingOf } from '../stockSetting';
import { freeId } from './ids';

export interface Copied {
  readonly job: Job;
  /** Id of the copy. */
  readonly stock: string;
}

const LONGEST = 120;

/** A thickness as typed, its unit apart. */
function split(typed: string): { readonly figure: string; readonly unit: string } {
  const [, figure = '', unit = ''] = /^(.*?)\s*(in|mm|")?$/.exec(typed.trim()) ?? [];
  return { figure, unit };
}

/** `Brass, 1.6 sheet` becomes `Brass, 1.0 sheet`; a name that does not tell its thickness gets the new one behind it. */
function renamed(name: string, from: string, to: string): string {
  const before = split(from);
  const after = split(to);
  const tells = [...name.matchAll(/(\d+(?:\.\d+|\/\d+)?)(\s*(?:in|mm)\b)?/g)].find(([, figure]) => figure === before.figure || Number(figure) === Number(before.figure));
  if (!tells) return `${name.trim().slice(0, LONGEST - 40)}${name.trim() ? ', ' : ''}${to.trim()} thick`.slice(0, LONGEST);
  const [all, , unit = ''] = tells;
  const unitAfter = before.unit === after.unit ? unit : after.unit && ` ${after.unit}`;
  return `${name.slice(0, tells.index)}${after.figure}${unitAfter}${name.slice(tells.index + all.length)}`.slice(0, LONGEST);
}

/**
 * A stock in another thickness: all else as it was, so an inside radius given as `thickness` goes with it. It stands behind the stock it is
 * copied from. Refuses a thickness that cannot be worked out or is not above 0.
 * @param thickness as typed: `1.0`, `1/16in`
 */
export function copyStockInThickness(job: Job, stockId: string, thickness: string): Result<Copied> {
  const field = `stocks.${stockId}.thickness`;
  const at = job.stocks.findIndex(({ id }) => id === stockId);
  const stock = job.stocks[at];
  if (!stock) return bad(field, `There is no stock "${stockId}" in this job.`);
  if (thickness.trim() === '') return bad(field, 'Type a thickness first, such as 1.0.');
  const copy = { ...stock, id: freeId(job.stocks, 'stock'), name: renamed(stock.name, stock.thickness, thickness), thickness: thickness.trim() };
  const next = { ...job, stocks: job.stocks.toSpliced(at + 1, 0, copy) };
  // An entry that leans on the stock's own thickness or radius is told by the stock's setting; what is wrong with the text itself, plainly here.
  const plain = evaluate(copy.thickness, 'length', settingOf(job, stock).context);
  if (!plain.ok) return bad(field, plain.problem.says);
  const wrong = settingOf(next, copy).problems.find((problem) => problem.field === `stocks.${copy.id}.thickness`);
  if (wrong) return bad(field, plain.value > 0 ? wrong.says : 'A thickness must be above 0.');
  return good({ job: next, stock: copy.id });
}
