/** Changing one thing in a job: the same object comes back where nothing changes. */
import type { Job, JobLeg, JobPart } from '../schema';

interface HasId {
  readonly id: string;
}

function changeItem<Item extends HasId>(items: Item[], id: string, change: (item: Item) => Item): Item[] {
  const at = items.findIndex((item) => item.id === id);
  const item = items[at];
  if (item === undefined) return items;
  const changed = change(item);
  return changed === item ? items : items.with(at, changed);
}

export function changePart(job: Job, partId: string, change: (part: JobPart) => JobPart): Job {
  const parts = changeItem(job.parts, partId, change);
  return parts === job.parts ? job : { ...job, parts };
}

export const changeLegs = (job: Job, partId: string, change: (legs: JobLeg[]) => JobLeg[]): Job =>
  changePart(job, partId, (part) => {
    const legs = change(part.legs);
    return legs === part.legs ? part : { ...part, legs };
  });

export const changeLeg = (job: Job, partId: string, legId: string, change: (leg: JobLeg) => JobLeg): Job =>
  changeLegs(job, partId, (legs) => changeItem(legs, legId, change));

/** An item moved to another place of its list; the place is counted without the item and held within the list. */
export function moveItem<Item extends HasId>(items: Item[], id: string, to: number): Item[] {
  const at = items.findIndex((item) => item.id === id);
  const item = items[at];
  if (item === undefined || !Number.isFinite(to)) return items;
  const place = Math.min(Math.max(Math.trunc(to), 0), items.length - 1);
  return place === at ? items : items.toSpliced(at, 1).toSpliced(place, 0, item);
}
