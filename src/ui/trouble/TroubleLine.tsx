import { report, useBench } from '../../store/bench';
import { Mark } from '../checks/Mark';
import { saveJobToFile } from '../files/jobFile';
import './trouble.css';

/** Speaks only when the browser could not keep or bring back the job. */
export function TroubleLine() {
  const trouble = useBench((state) => state.trouble);
  return (
    <div role="alert">
      {trouble !== null && (
        <div className="trouble-line">
          <Mark level="care" />
          <p>{trouble}</p>
          <button type="button" className="link" onClick={saveJobToFile}>
            Save it to a file
          </button>
          <button type="button" className="link" onClick={() => report(null)}>
            Clear
          </button>
        </div>
      )}
    </div>
  );
}
