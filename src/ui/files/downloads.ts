/** Files for the cutter, asked for by a button: made, handed over, and told about beside the button. */
import { bench } from '../../store/bench';
import { setOutcome } from '../screen';
import { cutFile, partCalled, type CutForm } from './cutFile';
import { download } from './download';

const TYPES: Record<CutForm, string> = { dxf: 'image/vnd.dxf', svg: 'image/svg+xml' };

/** A writer that did not come over the net is told plainly; everything else about it is answered by `cutFile`. */
async function made(partId: string, form: CutForm): Promise<Awaited<ReturnType<typeof cutFile>>> {
  try {
    return await cutFile(bench.getState().job, partId, form);
  } catch {
    return { ok: false, says: ['The part of Bendwright that writes this file did not load. Look at the connection and try once more.'] };
  }
}

async function downloadOne(partId: string, form: CutForm): Promise<void> {
  const file = await made(partId, form);
  if (file.ok) {
    download(file.name, file.text, TYPES[form]);
    setOutcome({ good: true, lines: [`Saved ${file.name}.`, ...file.notes] });
  } else {
    const { job } = bench.getState();
    setOutcome({ good: false, lines: [`${partCalled(job, partId)} is not ready to go out.`, ...file.says] });
  }
}

export const downloadDxf = (partId: string): Promise<void> => downloadOne(partId, 'dxf');
export const downloadSvg = (partId: string): Promise<void> => downloadOne(partId, 'svg');

/** Some browsers drop a file that is asked for in the same moment as another. */
const BETWEEN_FILES_MS = 250;

/** A DXF of every part that can go out, one file after another. */
export async function downloadAll(): Promise<void> {
  const { job } = bench.getState();
  const saved: string[] = [];
  const left: string[] = [];
  for (const { id } of job.parts) {
    // One after another, so that the files come in the order of the parts.
    // oxlint-disable-next-line no-await-in-loop
    const file = await made(id, 'dxf');
    if (file.ok) {
      if (saved.length > 0) {
        // oxlint-disable-next-line no-await-in-loop
        await new Promise((resolve) => setTimeout(resolve, BETWEEN_FILES_MS));
      }
      download(file.name, file.text, TYPES.dxf);
      saved.push(partCalled(job, id));
      left.push(...file.notes.map((note) => `${partCalled(job, id)}: ${note}`));
    } else left.push(`${partCalled(job, id)} was left out. ${file.says.join(' ')}`);
  }
  const count = `${saved.length} of ${job.parts.length} parts saved as DXF files.`;
  setOutcome({ good: saved.length === job.parts.length, lines: [count, ...left] });
}
