import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { addCutout } from '../../../src/job/edit/addCutout';
import { addLeg } from '../../../src/job/edit/addLeg';
import { addLug } from '../../../src/job/edit/addLug';
import { addPart } from '../../../src/job/edit/addPart';
import { addSize } from '../../../src/job/edit/addSize';
import { addStock } from '../../../src/job/edit/addStock';
import { copyCutout } from '../../../src/job/edit/copyCutout';
import { copyPart } from '../../../src/job/edit/copyPart';
import { copyStock } from '../../../src/job/edit/copyStock';
import { deleteCutout } from '../../../src/job/edit/deleteCutout';
import { deleteLeg } from '../../../src/job/edit/deleteLeg';
import { deletePart } from '../../../src/job/edit/deletePart';
import { deleteSize } from '../../../src/job/edit/deleteSize';
import { deleteStock } from '../../../src/job/edit/deleteStock';
import { moveCutout } from '../../../src/job/edit/moveCutout';
import { moveLeg } from '../../../src/job/edit/moveLeg';
import { movePart } from '../../../src/job/edit/movePart';
import { reverseRun } from '../../../src/job/edit/reverseRun';
import { setPlainUnit } from '../../../src/job/edit/setPlainUnit';
import { splitLeg } from '../../../src/job/edit/splitLeg';
import { mainRun } from '../../../src/job/edit/tree';
import { exampleJob } from '../../../src/job/exampleJob';
import { openJob } from '../../../src/job/openJob';
import { saveJob } from '../../../src/job/saveJob';
import { roundHole } from '../../../src/job/pieces';
import { checkReferences } from '../../../src/job/references';
import { resolvePart } from '../../../src/job/resolve';
import { STARTING_SHAPES } from '../../../src/job/startingShapes';
import type { Job } from '../../../src/job/schema';

type Pick = <Item>(items: readonly Item[]) => Item | undefined;
type Step = (job: Job, pick: Pick) => Job;

/** Each verb on something that is there, chosen by the numbers of the step. */
const verbs: Record<string, Step> = (() => {
  const onPart = (edit: (job: Job, part: Job['parts'][number], pick: Pick) => Job): Step => (job, pick) => {
    const part = pick(job.parts);
    return part ? edit(job, part, pick) : job;
  };
  const onLeg = (edit: (job: Job, part: string, leg: Job['parts'][number]['legs'][number], pick: Pick) => Job): Step =>
    onPart((job, part, pick) => {
      const leg = pick(part.legs);
      return leg ? edit(job, part.id, leg, pick) : job;
    });
  const onCutout = (edit: (job: Job, part: string, leg: string, cutout: string, pick: Pick) => Job): Step =>
    onLeg((job, part, leg, pick) => {
      const cutout = pick(leg.cutouts);
      return cutout ? edit(job, part, leg.id, cutout.id, pick) : job;
    });
  const { id: _, ...hole } = roundHole('', 'Hole', '3', '5');
  return {
    legAtStart: onPart((job, part) => addLeg(job, part.id, { at: 'start' })),
    legAtEnd: onPart((job, part) => addLeg(job, part.id, { at: 'end' })),
    legAfter: onLeg((job, part, leg) => addLeg(job, part, { at: 'after', leg: leg.id })),
    lug: onLeg((job, part, leg, pick) => addLug(job, part, leg.id, pick(['left', 'right'] as const) ?? 'left')),
    split: onLeg((job, part, leg, pick) => splitLeg(job, part, leg.id, { distance: pick(['10 mm', '15', '1/2in']) ?? '', angle: '30', way: 'up' })),
    deleteLeg: onLeg((job, part, leg) => deleteLeg(job, part, leg.id)),
    moveLeg: onLeg((job, part, leg, pick) => moveLeg(job, part, leg.id, pick([0, 1, 2, 3, 99]) ?? 0)),
    reverse: onPart((job, part) => reverseRun(job, part.id)),
    addCutout: onLeg((job, part, leg) => addCutout(job, part, leg.id, hole)),
    copyCutout: onCutout(copyCutout),
    deleteCutout: onCutout(deleteCutout),
    moveCutout: onCutout((job, part, leg, cutout, pick) => {
      const to = pick(job.parts.find(({ id }) => id === part)?.legs ?? []);
      return to ? moveCutout(job, part, leg, cutout, to.id) : job;
    }),
    addPart: (job, pick) => addPart(job, pick(STARTING_SHAPES) ?? 'flat', pick(job.stocks)?.id ?? ''),
    copyPart: onPart((job, part) => copyPart(job, part.id)),
    deletePart: onPart((job, part) => deletePart(job, part.id)),
    movePart: onPart((job, part, pick) => movePart(job, part.id, pick([0, 1, 5]) ?? 0)),
    addStock: (job) => {
      const { id: __, ...stock } = exampleJob.stocks[1] ?? exampleJob.stocks[0]!;
      return addStock(job, stock);
    },
    copyStock: (job, pick) => copyStock(job, pick(job.stocks)?.id ?? ''),
    deleteStock: (job, pick) => {
      const unused = job.stocks.filter(({ id }) => !job.parts.some(({ stock }) => stock === id));
      return deleteStock(job, (pick(unused) ?? pick(job.stocks))?.id ?? '');
    },
    addSize: (job) => addSize(job, { name: `size${job.sizes.length}x`, text: '5', note: '' }),
    deleteSize: (job, pick) => deleteSize(job, pick(job.sizes)?.id ?? ''),
    unit: (job) => setPlainUnit(job, job.units.plain === 'mm' ? 'in' : 'mm'),
  };
})();

const names = Object.keys(verbs);
const steps = fc.array(fc.tuple(fc.constantFrom(...names), fc.array(fc.nat(), { minLength: 4, maxLength: 4 })), { minLength: 1, maxLength: 25 });

function frozen<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

function walk(list: readonly (readonly [string, readonly number[]])[], seen: (job: Job, name: string, before: Job) => void): void {
  let job: Job = frozen(structuredClone(exampleJob));
  for (const [name, numbers] of list) {
    let used = 0;
    const pick: Pick = (items) => items[(numbers[used++ % 4] ?? 0) % Math.max(1, items.length)];
    const before = job;
    job = frozen(verbs[name]?.(job, pick) ?? job);
    seen(job, name, before);
  }
}

it('any edits in any order leave a job that hangs together, opens again, and is changed in place nowhere', () => {
  const worked = new Map<string, number>();
  let lugs = 0;
  fc.assert(
    fc.property(steps, (list) => {
      walk(list, (job, name, before) => {
        expect(checkReferences(job), name).toEqual([]);
        if (job !== before) {
          worked.set(name, (worked.get(name) ?? 0) + 1);
          expect(job, `${name} answered a new job that says the same`).not.toEqual(before);
        }
        for (const part of job.parts) {
          const run = mainRun(part.legs);
          lugs += part.legs.length - run.length;
          expect(part.legs.slice(0, run.length), `${name} puts the main run first`).toEqual(run);
        }
      });
      let last: Job = exampleJob;
      walk(list, (job) => (last = job));
      const opened = openJob(saveJob(last));
      expect(opened.ok ? opened.job : opened.faults).toEqual(last);
    }),
    { numRuns: 150, seed: 20 },
  );
  // The walk reached every verb, and parts with side lugs.
  expect(names.filter((name) => (worked.get(name) ?? 0) < 5)).toEqual([]);
  expect(lugs).toBeGreaterThan(200);
});

it('reversing twice is the same job, after any edits', () => {
  let reversed = 0;
  fc.assert(
    fc.property(steps, (list) => {
      walk(list, (job) => {
        for (const part of job.parts) {
          const once = reverseRun(job, part.id);
          if (once !== job) reversed += 1;
          expect(reverseRun(once, part.id)).toEqual(job);
        }
      });
    }),
    { numRuns: 40, seed: 21 },
  );
  expect(reversed).toBeGreaterThan(500);
});

it('changing the plain unit changes no worked-out value, after any edits', () => {
  let values = 0;
  fc.assert(
    fc.property(steps, (list) => {
      let job: Job = exampleJob;
      walk(list, (now) => (job = now));
      const other = setPlainUnit(job, job.units.plain === 'mm' ? 'in' : 'mm');
      for (const { id } of job.parts) {
        const before = resolvePart(job, id).values;
        const after = resolvePart(other, id).values;
        expect(after.size).toBe(before.size);
        for (const [field, value] of before) expect(Math.abs((after.get(field) ?? Infinity) - value), field).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
        values += before.size;
      }
    }),
    { numRuns: 60, seed: 22 },
  );
  expect(values).toBeGreaterThan(5000);
});
