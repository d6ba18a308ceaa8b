/** The file that goes to the cutter, made from a part of the job. The writers are loaded when the first file is asked for. */
import type { Result } from '../../core/result';
import { cutDrawing } from '../../drawing/cutDrawing';
import { distinctNames, fileName } from '../../export/fileName';
import { canGoOut, whyNot } from '../../job/workOut';
import type { Job } from '../../job/schema';
import { partOf } from '../../store/derived';

export type CutForm = 'dxf' | 'svg';

export type CutFile =
  | { readonly ok: true; readonly name: string; readonly text: string; readonly notes: readonly string[] }
  | { readonly ok: false; readonly says: readonly string[] };

const UNNAMED = 'Part';

export const partCalled = (job: Job, partId: string): string => job.parts.find(({ id }) => id === partId)?.name.trim() || UNNAMED;

/** Names of the files of all parts, in their order, each different from the others. */
export function cutFileNames(job: Job, form: CutForm): readonly string[] {
  return distinctNames(
    job.parts.map((part) => {
      const stock = job.stocks.find(({ id }) => id === part.stock);
      const { quantity } = partOf(job, part.id).resolved;
      return fileName({ part: part.name, ...(stock ? { stock: stock.name } : {}), ...(quantity === undefined ? {} : { quantity }) }, form);
    }),
  );
}

async function write(form: CutForm, job: Job, partId: string, drawing: Parameters<typeof import('../../export/dxf/writeDxf').writeDxf>[0]): Promise<Result<string>> {
  if (form === 'dxf') {
    const { writeDxf } = await import('../../export/dxf/writeDxf');
    return writeDxf(drawing, job.dxf);
  }
  const { writeSvg } = await import('../../export/svg/writeSvg');
  return writeSvg(drawing, { ...job.dxf, title: partCalled(job, partId) });
}

/** The cutter's file of one part, or the sentences that keep it from being made. */
/** Bend lines on a layer are for marking; a bureau that cuts all layers would slit the part. */
const bendLineNote = (job: Job, form: CutForm, bends: number): readonly string[] =>
  form === 'dxf' && bends > 0 && job.dxf.bendLines === 'layer'
    ? [`Its bend lines are on the layer ${job.dxf.layers.bends}: tell the bureau to mark them or leave them out, not to cut them.`]
    : [];

export async function cutFile(job: Job, partId: string, form: CutForm): Promise<CutFile> {
  const worked = partOf(job, partId);
  if (!canGoOut(worked) || !worked.shape) return { ok: false, says: whyNot(worked) };
  const { blank, layout } = worked.shape;
  const cut = cutDrawing(blank, { bendLines: job.dxf.bendLines, thickness: layout.part.thickness });
  if (!cut.ok) return { ok: false, says: [cut.problem.says] };
  const text = await write(form, job, partId, cut.value.drawing);
  if (!text.ok) return { ok: false, says: [text.problem.says] };
  const name = cutFileNames(job, form)[job.parts.findIndex(({ id }) => id === partId)] ?? fileName({ part: partCalled(job, partId) }, form);
  return { ok: true, name, text: text.value, notes: [...bendLineNote(job, form, blank.bends.length), ...cut.value.leftOut] };
}
