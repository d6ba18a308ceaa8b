/** From the job document to numbers: every entry of a part worked out, and every sentence about those that will not do. */
import type { Part } from '../core/part/types';
import type { Problem } from '../core/result';
import { makePartReader } from './partReader';
import { resolveLeg, type ResolvedLeg } from './resolveLeg';
import type { Job } from './schema';
import { settingOf } from './stockSetting';

/** More openings than this in one part are a slip of the hand. */
const MOST_CUTOUTS = 20_000;
const MOST_QUANTITY = 100_000;

export interface ResolvedPart {
  /** Undefined where any entry the part is made from could not be worked out. Quantity, density and unused sizes do not stop it. */
  readonly part: Part | undefined;
  readonly quantity: number | undefined;
  /** kg per cubic metre. */
  readonly density: number | undefined;
  /** All of them: sizes, scale and stock first, then along the part. `field` is the path in the job. */
  readonly problems: readonly Problem[];
  /** The value of every entry that could be worked out, by field path: the part's own, its stock's, and the scale. mm and rad. */
  readonly values: ReadonlyMap<string, number>;
}

/**
 * A part of the job as numbers, mm and rad. `thickness` and `radius` in its entries stand for its stock's; a stock's own radius
 * may use `thickness`. Never throws; every entry that will not do is named with its path and a sentence.
 */
export function resolvePart(job: Job, partId: string): ResolvedPart {
  const found = job.parts.find((part) => part.id === partId);
  if (!found) {
    const problems = [{ field: `parts.${partId}`, says: `There is no part "${partId}" in this job.` }];
    return { part: undefined, quantity: undefined, density: undefined, problems, values: new Map() };
  }
  const stock = job.stocks.find(({ id }) => id === found.stock);
  const setting = settingOf(job, stock);
  const reader = makePartReader(setting);
  const path = `parts.${found.id}`;
  if (!stock) reader.refuse(`${path}.stock`, `There is no stock "${found.stock}" in this job. Choose one of its stocks.`);
  const quantity = reader.read(`${path}.quantity`, 'Number off', found.quantity, 'count', (value) =>
    value >= 1 && value <= MOST_QUANTITY ? undefined : `Number off: ${value} will not do; it must be 1 to ${MOST_QUANTITY}.`,
  );

  const before = new Map<string, number>();
  const legs = found.legs.map((leg, i) => {
    const resolved = resolveLeg(setting, `${path}.legs.${leg.id}`, leg, i, leg.bend && before.get(leg.bend.parent));
    before.set(leg.id, i);
    return resolved;
  });

  const problems = [...setting.problems, ...reader.problems, ...legs.flatMap((leg) => leg.problems)];
  const crowded = tooManyCutouts(legs);
  if (crowded) problems.push(crowded);
  const values = new Map([...setting.values, ...reader.values]);
  for (const leg of legs) for (const [field, value] of leg.values) values.set(field, value);

  const { thickness, density, rule } = setting;
  const whole = legs.flatMap(({ leg }) => leg ?? []);
  const makes = whole.length === legs.length && !crowded && thickness !== undefined && rule;
  return { part: makes ? { thickness, rule, legs: whole } : undefined, quantity, density, problems, values };
}

function tooManyCutouts(legs: readonly ResolvedLeg[]): Problem | undefined {
  let total = 0;
  for (const { openings } of legs) {
    for (const { field, words, count } of openings) {
      total += count;
      if (total > MOST_CUTOUTS) return { field, says: `${words} brings the part to ${total} cut-outs. ${MOST_CUTOUTS} is the most in one part.` };
    }
  }
  return undefined;
}
