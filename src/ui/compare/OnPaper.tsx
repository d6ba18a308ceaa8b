import { Outcome } from '../trouble/Outcome';
import { saveCsv, savePaper } from './outputs';
import type { Compared } from './useComparison';

export function OnPaper(compared: Compared) {
  return (
    <section className="room-area out" aria-label="Take it along">
      <h2 className="area-title">Take it along</h2>
      <div className="outputs">
        <button type="button" className="btn" onClick={() => void saveCsv(compared)}>
          Table as CSV <small>for a spreadsheet</small>
        </button>
        <button type="button" className="btn" onClick={() => void savePaper(compared)}>
          Comparison on paper <small>overlays and table, PDF</small>
        </button>
      </div>
      <Outcome />
    </section>
  );
}
