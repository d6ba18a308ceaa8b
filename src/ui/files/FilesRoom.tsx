import { useBench } from '../../store/bench';
import '../card/card.css';
import '../stock/stock.css';
import { DxfSettings } from './DxfSettings';
import { JobFile } from './JobFile';
import { PartFiles } from './PartFiles';
import { StartAfresh } from './StartAfresh';
import './files.css';

/** Job files in and out, files for the cutter, and how those are written. */
export function FilesRoom() {
  const job = useBench((state) => state.job);
  return (
    <main id="sheet" className="sheet two without-tabs" tabIndex={-1}>
      <h1 className="unseen">Files</h1>
      <div className="wide-side">
        <JobFile />
        <PartFiles job={job} />
        <StartAfresh />
      </div>
      <DxfSettings job={job} />
    </main>
  );
}
