import { Mark } from '../checks/Mark';
import { setOutcome, useScreen } from '../screen';
import './trouble.css';

/** What came of the file that was asked for last: its name, or the sentences that kept it from being made. */
export function Outcome() {
  const outcome = useScreen((state) => state.outcome);
  if (!outcome) return null;
  return (
    <div className={outcome.good ? 'outcome' : 'outcome wrong'}>
      <Mark level={outcome.good ? 'good' : 'stop'} />
      <div>
        {outcome.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      <button type="button" className="link" onClick={() => setOutcome(null)}>
        Clear
      </button>
    </div>
  );
}
