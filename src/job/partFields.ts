/** From a field path of the core's part (indices, the core's names) to the path of the entry in the job. */
import type { Job } from './schema';

/** Names that differ between the core's part and the job document. */
const RENAMED: Readonly<Record<string, string>> = { turn: 'angle' };

/** `legs.2.bend.turn` of part `strap` becomes `parts.strap.legs.peg.bend.angle`; stock values lead to the stock. */
export function jobField(job: Job, partId: string, field: string): string {
  const part = job.parts.find((p) => p.id === partId);
  const [head, legIndex, ...rest] = field.split('.');
  if (!part) return field;
  if (head === 'thickness' || head === 'rule') return `stocks.${part.stock}.${field}`;
  const leg = part.legs[Number(legIndex)];
  if (head !== 'legs' || !leg) return `parts.${partId}.${field}`;
  const [group, key, ...deeper] = rest;
  const path =
    group === 'cutouts'
      ? ['cutouts', leg.cutouts[Number(key)]?.id ?? key ?? '', ...deeper]
      : group === 'bend'
        ? ['bend', ...(key === undefined ? [] : [RENAMED[key] ?? key]), ...deeper]
        : rest;
  return ['parts', partId, 'legs', leg.id, ...path].join('.');
}
