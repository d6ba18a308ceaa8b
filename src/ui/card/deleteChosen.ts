/** Deleting what is chosen. It asks nothing: undo is the answer. */
import { legLetter } from '../../core/part/names';
import { deleteCutout } from '../../job/edit/deleteCutout';
import { deleteLeg } from '../../job/edit/deleteLeg';
import { mainRun } from '../../job/edit/tree';
import { apply, bench, type Bench } from '../../store/bench';
import { say } from '../screen';

/** Whether what is chosen can be deleted, or why not. */
export function deletable({ job, part, chosen }: Bench): true | string {
  const legs = job.parts.find(({ id }) => id === part)?.legs ?? [];
  if (!chosen) return 'Choose a leg or a hole first.';
  if (chosen.kind === 'bend') return 'A bend goes with the leg behind it. Delete that leg, or give the bend another angle.';
  if (chosen.kind === 'leg' && legs[0]?.id === chosen.leg && mainRun(legs).length === 1) return 'The last leg of a part stays.';
  return true;
}

export function deleteChosen(): void {
  const { job, part: partId, chosen } = bench.getState();
  const part = job.parts.find(({ id }) => id === partId);
  const at = part?.legs.findIndex(({ id }) => id === chosen?.leg) ?? -1;
  const leg = part?.legs[at];
  if (!part || !chosen || !leg) return;
  if (chosen.kind === 'cutout') {
    const name = leg.cutouts.find(({ id }) => id === chosen.cutout)?.name.trim() || 'cut-out';
    apply((held) => deleteCutout(held, partId, leg.id, chosen.cutout), { label: `deleting ${name}`, chosen: { kind: 'leg', leg: leg.id } });
    say(`Deleted ${name}.`);
  } else if (chosen.kind === 'leg') {
    const called = `leg ${legLetter(at)}${leg.name.trim() ? ` (${leg.name.trim()})` : ''}`;
    apply((held) => deleteLeg(held, partId, leg.id), { label: `deleting ${called}`, chosen: null });
    say(`Deleted ${called}.`);
  }
}
