/** The files that a part goes out as, or the plain sentences that say why it does not go out. */
import { cutDrawing } from '../drawing/cutDrawing';
import { whyNot, type WorkedOut } from '../job/workOut';
import type { Job } from '../job/schema';
import { writeDxf } from './dxf/writeDxf';
import { distinctNames, fileName } from './fileName';
import { writeSvg } from './svg/writeSvg';

export type PartFiles =
  | { readonly ok: true; readonly dxf: string; readonly svg: string }
  | { readonly ok: false; readonly reasons: readonly string[] };

/** DXF and SVG of one part, drawn from the same cut drawing. A part in error is refused with every reason. */
export function partFiles(job: Job, partId: string, worked: WorkedOut): PartFiles {
  const part = job.parts.find((p) => p.id === partId);
  const { shape } = worked;
  const reasons = whyNot(worked);
  if (!part || !shape || reasons.length > 0) return { ok: false, reasons: reasons.length > 0 ? reasons : ['There is no such part.'] };
  const cut = cutDrawing(shape.blank, { bendLines: job.dxf.bendLines, thickness: shape.layout.part.thickness });
  if (!cut.ok) return { ok: false, reasons: [cut.problem.says] };
  const dxf = writeDxf(cut.value.drawing, job.dxf);
  const svg = writeSvg(cut.value.drawing, { ...job.dxf, title: part.name });
  const problems = [dxf, svg].flatMap((written) => (written.ok ? [] : [written.problem.says]));
  return dxf.ok && svg.ok ? { ok: true, dxf: dxf.value, svg: svg.value } : { ok: false, reasons: [...new Set(problems)] };
}

/** One file name a part, without its ending, by part, stock and quantity; no two alike on any system. */
export function partFileStems(parts: readonly { readonly job: Job; readonly partId: string; readonly quantity: number | undefined }[]): readonly string[] {
  const names = parts.map(({ job, partId, quantity }) => {
    const part = job.parts.find((p) => p.id === partId);
    const stock = job.stocks.find((s) => s.id === part?.stock)?.name ?? '';
    return fileName({ part: part?.name ?? '', stock, ...(quantity === undefined ? {} : { quantity }) }, 'dxf');
  });
  return distinctNames(names).map((name) => name.slice(0, -'.dxf'.length));
}
