import { newFindings } from '../../job/compare/newFindings';
import { Mark } from '../checks/Mark';
import { LineSample } from './LineSample';
import type { Compared } from './useComparison';

/** What becomes too tight or too short, stock by stock: only what the present stock does not have. */
export function Worse({ comparison, stocks }: Compared) {
  const [now, ...others] = comparison.stocks;
  if (!now) return null;
  return (
    <section className="room-area worse" aria-label="What becomes too tight or too short">
      <h2 className="area-title">Too tight, too short, too near</h2>
      {others.map(({ worked }, i) => {
        const found = newFindings(now.worked, worked);
        const name = stocks[i + 1]?.name.trim() || 'Stock without a name';
        return (
          <div key={stocks[i + 1]?.id ?? name}>
            <h3>
              <LineSample place={i + 1} /> {name}
            </h3>
            <ul>
              {found.length === 0 && (
                <li>
                  <Mark level="good" />
                  <span>{worked.shape ? 'Nothing that is not so already in the present stock.' : 'The same stands in the way as in the present stock.'}</span>
                </li>
              )}
              {found.map(({ level, says }) => (
                <li key={says}>
                  <Mark level={level} />
                  <span>{says}</span>
                </li>
              ))}
            </ul>
          </div>
        );
      })}
    </section>
  );
}
