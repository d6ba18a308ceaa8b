import { Outcome } from '../trouble/Outcome';
import { downloadAll, downloadDxf, downloadSvg } from '../files/downloads';
import { saveJobToFile } from '../files/jobFile';
import { careCount, wrongCount } from '../tabs/partStatus';
import type { ThePart } from './useThePart';

/** What stands under the main button: what to look at before the file goes out. */
export function before(worked: ThePart['worked']): string {
  const wrong = wrongCount(worked);
  if (wrong > 0) return `${wrong} to put right first`;
  const care = careCount(worked);
  if (care === 0) return 'ready to cut';
  return care === 1 ? '1 check to look at first' : `${care} checks to look at first`;
}

export function CutIt({ job, part, worked }: ThePart) {
  const count = job.parts.length;
  return (
    <section className="cut-it" aria-label="Cut it" id="cut-it">
      <h2 className="area-title">Cut it</h2>
      <div className="outputs">
        <button type="button" className="btn main" onClick={() => void downloadDxf(part.id)}>
          DXF for the bureau <small>{before(worked)}</small>
        </button>
        <button type="button" className="btn" onClick={() => void downloadSvg(part.id)}>
          SVG of the blank <small>true size, layers named</small>
        </button>
        <button type="button" className="btn" onClick={() => void downloadAll()}>
          All parts <small>{count === 1 ? '1 DXF file' : `${count} DXF files`}</small>
        </button>
        <button type="button" className="btn" onClick={saveJobToFile}>
          Save the job <small>to a file of your own</small>
        </button>
      </div>
      <Outcome />
      <p className="caution">
        Cut edges are sharp: wear gloves, deburr them. Not for lifting or holding people; structural and pressure work is out of scope.
      </p>
    </section>
  );
}
