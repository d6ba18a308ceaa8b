import type { Problem } from '../../core/result';
import type { LaidPapers, PaperKind, PaperWish } from '../../drawing/papers/types';
import type { Job } from '../../job/schema';
import { say } from '../screen';
import { Outcome } from '../trouble/Outcome';
import { KINDS } from './kinds';
import { PaperRows } from './PaperRows';
import { PartChoice } from './PartChoice';
import { askToPrint, paperSetting, type PaperSetting } from './paperSetting';
import { PrinterCorrection } from './PrinterCorrection';
import { savePdf } from './prints';

export interface PaperCardProps {
  readonly job: Job;
  readonly setting: PaperSetting;
  readonly wish: PaperWish;
  /** What is wrong with the bars as measured. */
  readonly bars: Problem | undefined;
  readonly laid: LaidPapers | undefined;
  readonly current: boolean;
}

/** What is printed, of which parts, on what paper. */
export function PaperCard(props: PaperCardProps) {
  const { job, setting, wish, laid, current } = props;
  const count = laid?.pages.length ?? 0;
  const sheets = count === 1 ? '1 sheet' : `${count} sheets`;
  return (
    <aside className="card" aria-label="What to print">
      <div className="card-middle">
        <KindChoice kind={setting.kind} />
        <PartChoice {...props} />
        <PaperRows {...props} />
        {setting.kind !== 'sheet' && <PrinterCorrection {...props} />}
      </div>
      <section className="cut-it" aria-label="Print it">
        <div className="outputs">
          <button type="button" className="btn main" onClick={askToPrint}>
            Print <small>{count > 0 ? `${sheets} of ${wish.paper}` : 'nothing to print yet'}</small>
          </button>
          <button type="button" className="btn" aria-disabled={!current} onClick={() => (current && laid ? void savePdf(job, wish, laid) : say('The pages are still being laid.'))}>
            PDF <small>a file to keep or send</small>
          </button>
        </div>
        <Outcome />
      </section>
    </aside>
  );
}

function KindChoice({ kind }: { readonly kind: PaperKind }) {
  return (
    <fieldset className="kinds room-area">
      <legend className="area-title">What to print</legend>
      <div className="kind-row">
        {(Object.keys(KINDS) as PaperKind[]).map((each) => (
          <label key={each} className="kind">
            <input type="radio" name="kind of paper" className="unseen" checked={each === kind} onChange={() => paperSetting.setState({ kind: each })} />
            <span className="btn">
              {KINDS[each].name} <small>{KINDS[each].use}</small>
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
