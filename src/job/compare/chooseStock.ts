/** Makes a compared stock the part's own, with what was held written into the entries. */
import type { Along } from '../../core/part/types';
import { changeLeg } from '../edit/change';
import { writeField } from '../fields';
import type { Job, JobCutout } from '../schema';
import { compareStocks } from './compareStocks';
import type { Keep } from './keepSizes';

type JobAlong = JobCutout['along'];

/** Places of an mm written into an entry: a millionth, far below what any tool can hold. */
const PLACES = 6;

/** A length as an entry in the job's plain unit. */
const entry = (mm: number, plain: Job['units']['plain']): string => String(Number((plain === 'mm' ? mm : mm / 25.4).toFixed(PLACES)));

/**
 * Legs that hold nothing keep their entries as typed. Legs that hold sizes or holes get the figures that hold them; an entry that
 * comes to its figure in the new stock as well, such as `6*pitch + 22`, stays as it was typed.
 * The same job where the part cannot be laid out in that stock.
 */
export function chooseStock(job: Job, partId: string, stock: string, keep: readonly Keep[] = []): Job {
  const chosen = compareStocks(job, partId, [stock], keep).stocks.find((s) => s.stock === stock);
  const part = chosen?.worked.shape?.layout.part;
  if (!part) return job;
  const { plain } = job.units;
  const typed = chosen.worked.resolved.values;
  const written = (path: string, before: string, mm: number): string => {
    const worth = typed.get(`parts.${partId}.legs.${path}`);
    return worth !== undefined && entry(worth, plain) === entry(mm, plain) ? before : entry(mm, plain);
  };
  const moved = writeField(job, `parts.${partId}.stock`, stock);
  return part.legs.reduce((soFar, leg, i) => {
    const held = keep[i] ?? 'as typed';
    const parent = leg.bend?.seat ? keep[leg.bend.parent] : undefined;
    const seat = parent === 'outside' || parent === 'inside' ? leg.bend?.seat : undefined;
    if (held === 'as typed' && !seat) return soFar;
    return changeLeg(soFar, partId, leg.id, (before) => ({
      ...before,
      ...(held === 'outside' || held === 'inside'
        ? { length: written(`${leg.id}.length`, before.length, leg.length), startBasis: leg.startBasis, endBasis: leg.endBasis }
        : {}),
      ...(seat && before.bend?.seat
        ? { bend: { ...before.bend, seat: { ...before.bend.seat, along: seatAlong(before.bend.seat.along, seat.along) } } }
        : {}),
      cutouts: held === 'as typed' ? before.cutouts : before.cutouts.map((cutout) => {
        const along = leg.cutouts.find((c) => c.id === cutout.id)?.along;
        if (!along) return cutout;
        return { ...cutout, along: { ...cutout.along, basis: along.basis, distance: written(`${leg.id}.cutouts.${cutout.id}.along.distance`, cutout.along.distance, along.distance) } };
      }),
    }));

    function seatAlong(was: JobAlong, to: Along): JobAlong {
      return { ...was, basis: to.basis, distance: written(`${leg.id}.bend.seat.along.distance`, was.distance, to.distance) };
    }
  }, moved);
}
