/** Core and export, without a browser. Each line states its work; growth is reported as a ratio. */
import { Bench } from 'tinybench';
import { cutDrawing } from '../src/drawing/cutDrawing';
import { writeDxf } from '../src/export/dxf/writeDxf';
import { fold } from '../src/core/part/fold';
import { layOut } from '../src/core/part/layOut';
import { unfold } from '../src/core/part/unfold';
import { resolvePart } from '../src/job/resolve';
import { workOut } from '../src/job/workOut';
import type { Job } from '../src/job/schema';
import { plateWithHoles, zigzag } from './sampleJobs';

async function median(name: string, work: () => unknown): Promise<number> {
  const bench = new Bench({ time: 400, warmupTime: 100 });
  bench.add(name, () => void work());
  await bench.run();
  const result = bench.tasks[0]?.result as { latency?: { p50?: number } } | undefined;
  const ms = result?.latency?.p50;
  if (ms === undefined) throw new Error(`${name} could not be timed.`);
  return ms;
}

const geometry = (job: Job): void => {
  const { part } = resolvePart(job, 'bench');
  const laid = part && layOut(part);
  if (!laid?.ok) throw new Error('The benchmark part must be sound.');
  unfold(laid.value);
  fold(laid.value);
};

export async function benchCore(): Promise<void> {
  console.log('Unfold and fold from entries, flat plate with round holes (resolve, lay out, unfold, fold):');
  let before: { count: number; ms: number } | undefined;
  for (const count of [10, 100, 1000, 10_000]) {
    const job = plateWithHoles(count);
    const ms = await median(`${count} holes`, () => geometry(job));
    const growth = before ? `, ${(ms / before.ms).toFixed(1)} × for ${count / before.count} × the holes` : '';
    console.log(`  ${String(count).padStart(6)} holes: ${ms.toFixed(3)} ms${growth}`);
    before = { count, ms };
  }

  const bent = zigzag(12, 300);
  console.log('A 12-bend part with 300 holes:');
  console.log(`  geometry from entries: ${(await median('geometry', () => geometry(bent))).toFixed(3)} ms`);
  console.log(`  with all checks:       ${(await median('work out', () => workOut(bent, 'bench'))).toFixed(3)} ms`);

  const plate = workOut(plateWithHoles(10_000), 'bench');
  if (!plate.shape) throw new Error('The benchmark plate must be sound.');
  const cut = cutDrawing(plate.shape.blank, { bendLines: 'layer', thickness: 1.6 });
  if (!cut.ok) throw new Error(cut.problem.says);
  const settings = { unit: 'mm', layers: { outline: 'CUT', cutouts: 'CUT', bends: 'BEND' } } as const;
  let bytes = 0;
  const ms = await median('dxf', () => {
    const text = writeDxf(cut.value.drawing, settings);
    if (text.ok) bytes = text.value.length;
  });
  console.log(`DXF of 10 000 holes: ${ms.toFixed(0)} ms, ${(bytes / 1e6).toFixed(2)} MB`);
}
