/** Jobs of a stated size for the benchmarks. All sizes invented. */
import { exampleJob } from '../src/job/exampleJob';
import type { Job, JobCutout, JobLeg } from '../src/job/schema';

const hole = (id: string, pattern: JobCutout['pattern'], along: string, across = '0'): JobCutout => ({
  id,
  name: id,
  shape: { kind: 'round', diameter: '2' },
  along: { from: 'start', basis: 'straight', distance: along },
  across: { from: 'centre', distance: across },
  pattern,
});

const flatLeg = (id: string, length: string, width: string, cutouts: JobCutout[]): JobLeg => ({
  id,
  name: id,
  length,
  startBasis: 'outside',
  endBasis: 'outside',
  startWidth: width,
  endWidth: width,
  startShape: { kind: 'square' },
  endShape: { kind: 'square' },
  cutouts,
});

const onePart = (legs: JobLeg[]): Job => ({
  ...exampleJob,
  parts: [{ id: 'bench', name: 'Bench part', stock: exampleJob.stocks[0]?.id ?? '', quantity: '1', legs }],
});

/** A flat plate with `count` round holes in a square grid at 5 mm pitch. */
export function plateWithHoles(count: number): Job {
  const side = Math.ceil(Math.sqrt(count));
  const rows = Math.ceil(count / side);
  const size = String(side * 5 + 20);
  const grid = hole('grid', { kind: 'grid', alongCount: String(side), alongPitch: '5', acrossCount: String(rows), acrossPitch: '5' }, '10');
  return onePart([flatLeg('plate', size, size, [grid])]);
}

/** A zigzag of `bends` bends and `holes` holes shared out over its legs: the part of the edit benchmark has 12 and 300. */
export function zigzag(bends: number, holes: number): Job {
  const each = Math.floor(holes / (bends + 1));
  const legs = Array.from({ length: bends + 1 }, (_, i): JobLeg => {
    const count = i === bends ? holes - each * bends : each;
    const row = hole(`row-${i}`, { kind: 'row', direction: 'along', count: String(count), pitch: '4' }, '14');
    const leg = flatLeg(`leg-${i}`, String(count * 4 + 30), '20', [row]);
    const way = i % 2 === 1 ? 'up' : 'down';
    return i === 0 ? leg : { ...leg, bend: { parent: `leg-${i - 1}`, edge: 'end', angle: '60', way, radius: 'radius' } };
  });
  return onePart(legs);
}
