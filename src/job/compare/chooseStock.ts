/** Makes a compared stock the part's own, with what was held written into the entries. */
import { changeLeg } from '../edit/change';
import { writeField } from '../fields';
import type { Job } from '../schema';
import { compareStocks } from './compareStocks';
import type { Keep } from './keepSizes';

/** Places of an mm written into an entry: a millionth, far below what any tool can hold. */
const PLACES = 6;

/** A length as an entry in the job's plain unit. */
const entry = (mm: number, plain: Job['units']['plain']): string => String(Number((plain === 'mm' ? mm : mm / 25.4).toFixed(PLACES)));

/**
 * Legs that hold nothing keep their entries as typed. Legs that hold sizes or holes get the figures that hold them.
 * The same job where the part cannot be laid out in that stock.
 */
export function chooseStock(job: Job, partId: string, stock: string, keep: readonly Keep[] = []): Job {
  const chosen = compareStocks(job, partId, [stock], keep).stocks.find((s) => s.stock === stock);
  const part = chosen?.worked.shape?.layout.part;
  if (!part) return job;
  const { plain } = job.units;
  const moved = writeField(job, `parts.${partId}.stock`, stock);
  return part.legs.reduce((soFar, leg, i) => {
    const held = keep[i] ?? 'as typed';
    if (held === 'as typed') return soFar;
    return changeLeg(soFar, partId, leg.id, (before) => ({
      ...before,
      ...(held === 'holes' ? {} : { length: entry(leg.length, plain), startBasis: leg.startBasis, endBasis: leg.endBasis }),
      cutouts: before.cutouts.map((cutout) => {
        const along = leg.cutouts.find((c) => c.id === cutout.id)?.along;
        return along ? { ...cutout, along: { ...cutout.along, basis: along.basis, distance: entry(along.distance, plain) } } : cutout;
      }),
    }));
  }, moved);
}
