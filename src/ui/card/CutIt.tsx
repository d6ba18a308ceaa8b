import { Outcome } from '../trouble/Outcome';
import { downloadAll, downloadDxf, downloadSvg } from '../files/downloads';
import { saveJobToFile } from '../files/jobFile';
import { showPaper, usePaperSetting } from '../papers/paperSetting';
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
  const paper = usePaperSetting((state) => state.paper);
  const count = job.parts.length;
  return (
    <section className="cut-it" aria-label="Cut it, or print it" id="cut-it">
      <h2 className="area-title">Cut it, or print it</h2>
      <div className="outputs">
        <button type="button" className="btn main" onClick={() => void downloadDxf(part.id)}>
          DXF for the bureau <small>{before(worked)}</small>
        </button>
        <button type="button" className="btn" onClick={() => showPaper('template')}>
          Paper template <small>full size, on {paper}</small>
        </button>
        <button type="button" className="btn" onClick={() => showPaper('sheet')}>
          Shop sheet <small>section, blank, bend order</small>
        </button>
        <button type="button" className="btn" onClick={() => void downloadSvg(part.id)}>
          SVG of the blank <small>true size, layers named</small>
        </button>
      </div>
      <div className="links">
        <button type="button" className="link" onClick={() => void downloadAll()}>
          All parts, {count === 1 ? '1 DXF file' : `${count} DXF files`}
        </button>
        <button type="button" className="link" onClick={saveJobToFile}>
          Save the job to a file
        </button>
      </div>
      <Outcome />
      <p className="caution">
        Cut edges are sharp: wear gloves, deburr them. Not for lifting or holding people; structural and pressure work is out of scope.
      </p>
    </section>
  );
}
