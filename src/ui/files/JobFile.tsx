import { useId, useRef } from 'react';
import { Mark } from '../checks/Mark';
import { screen, setOutcome, useScreen } from '../screen';
import { Outcome } from '../trouble/Outcome';
import { saveJobToFile } from './jobFile';
import { openFile } from './openings';
import { PutAside } from './PutAside';

/** Saving the job to a file, and opening one. A file with a fault changes nothing. */
export function JobFile() {
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setOutcome(null);
    await openFile(file);
    // The same file can be chosen once more after it was put right.
    if (input.current) input.current.value = '';
  };
  return (
    <section className="room-area" aria-label="The job file">
      <h2 className="area-title">The job file</h2>
      <p className="quiet">This browser keeps the job as you work. A file of your own is safe from cleared browsers and lost machines, and goes to others.</p>
      <div className="file-buttons">
        <button type="button" className="btn main" onClick={saveJobToFile}>
          Save the job <small>to a file of your own</small>
        </button>
        <input ref={input} id={id} className="unseen" type="file" accept=".json,application/json" onChange={({ currentTarget }) => void take(currentTarget.files?.[0])} />
        <label className="btn" htmlFor={id}>
          Open a job <small>choose a file, or drop it anywhere</small>
        </label>
      </div>
      <PutAside />
      <Outcome />
      <Refused />
    </section>
  );
}

/** Every fault of the file that was not opened: where, what, and what would be right. */
function Refused() {
  const refused = useScreen((state) => state.refused);
  if (!refused) return null;
  return (
    <div className="outcome wrong">
      <Mark level="stop" />
      <div className="faults">
        <p>{refused.name} was not opened; the job on the bench is untouched.</p>
        <ul>
          {refused.faults.map(({ where, says }) => (
            <li key={`${where} ${says}`}>
              {where !== 'the file' && <b>{where}: </b>}
              {says}
            </li>
          ))}
        </ul>
      </div>
      <button type="button" className="link" onClick={() => screen.setState({ refused: null })}>
        Clear
      </button>
    </div>
  );
}
