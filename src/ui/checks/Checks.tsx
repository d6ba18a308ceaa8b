import { useBench } from '../../store/bench';
import { partOf } from '../../store/derived';
import { careCount, wrongCount } from '../tabs/partStatus';
import { Mark, type Level } from './Mark';
import { showField, showPlace } from './showMe';

interface Item {
  readonly key: string;
  readonly level: Level;
  readonly says: string;
  readonly show: (() => void) | undefined;
}

/** Every sentence worth saying about the part: fields at fault first, then the checks, worst first. */
export function Checks() {
  const job = useBench((state) => state.job);
  const partId = useBench((state) => state.part);
  const worked = partOf(job, partId);
  const layout = worked.shape?.layout;
  const items: Item[] = [
    ...worked.problems.map(({ field, says }) => ({ key: `${field} ${says}`, level: 'stop' as const, says, show: () => showField(field) })),
    ...worked.findings.map(({ key, level, says, place }) => ({ key, level, says, show: place && layout ? () => showPlace(layout, place) : undefined })),
  ];
  return (
    <section className="checks" aria-label="Checks">
      <div className="cap">
        <h2>Checks</h2>
        <p>{summary(wrongCount(worked), careCount(worked), items.filter(({ level }) => level === 'good').length)}</p>
      </div>
      <ul>
        {items.map(({ key, level, says, show }) => (
          <li key={key}>
            <Mark level={level} />
            <span>{says}</span>
            {show && (
              <button type="button" className="link" onClick={show}>
                Show me<span className="unseen">: {says}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

const summary = (wrong: number, care: number, fine: number): string =>
  [wrong > 0 && `${wrong} to put right`, care > 0 && `${care} to look at`, fine > 0 && `${fine} good`].filter(Boolean).join(', ');
