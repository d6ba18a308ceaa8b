import { partOf } from '../../store/derived';
import { partStatus } from '../tabs/partStatus';
import type { PaperCardProps } from './PaperCard';
import { paperSetting } from './paperSetting';
import { SettingText } from './SettingText';
import { copiesOf } from './wish';

/** Which parts are printed, and how many copies of each. */
export function PartChoice({ job, setting, wish, laid }: PaperCardProps) {
  const chosen = wish.parts.map(({ id }) => id);
  const choose = (id: string, take: boolean): void => {
    paperSetting.setState({ chosen: job.parts.map((part) => part.id).filter((each) => (each === id ? take : chosen.includes(each))) });
  };
  /** The sentence that belongs to the copies of a part. */
  const copiesSay = (id: string): string | undefined => {
    const place = /^subjects\.(\d+)\.copies$/.exec(laid?.problem?.field ?? '')?.[1];
    const left = new Set(laid?.leftOut.map((out) => out.id));
    const printed = chosen.filter((each) => !left.has(each));
    return place !== undefined && printed[Number(place)] === id ? laid?.problem?.says : undefined;
  };
  const general = laid?.problem && ['parts', 'subjects'].includes(laid.problem.field) && laid.leftOut.length === 0 ? laid.problem.says : undefined;
  const several = setting.kind !== 'sheet';
  return (
    <section className="room-area" aria-label="Parts to print">
      <table className="plain-table paper-parts">
        <thead>
          <tr>
            <th scope="col">Parts</th>
            {several && (
              <th scope="col" className="num">
                Copies
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {job.parts.map((part, i) => {
            const name = part.name.trim() || 'Part';
            const taken = chosen.includes(part.id);
            const out = laid?.leftOut.find(({ id }) => id === part.id);
            const status = partStatus(partOf(job, part.id));
            const copies = (copied: string): void => paperSetting.setState(({ copies: all }) => ({ copies: { ...all, [part.id]: copied } }));
            return (
              <tr key={part.id} className={taken ? 'taken' : ''}>
                <td>
                  <label className="tick">
                    <input type="checkbox" checked={taken} onChange={({ currentTarget }) => choose(part.id, currentTarget.checked)} />
                    <span>
                      {i + 1} {name}
                    </span>
                    {status.level === 'stop' && <small className="stop">{status.words}</small>}
                  </label>
                  {taken && out && <p className="left-out">Not printed. {out.says.join(' ')}</p>}
                </td>
                {several && (
                  <td className="num">
                    {taken && <SettingText label={`${name}, copies`} value={copiesOf(setting, part.id)} onType={copies} says={copiesSay(part.id)} />}
                  </td>
                )}
              </tr>
            );
          })}
        </tbody>
      </table>
      {general !== undefined && <p className="left-out">{general}</p>}
    </section>
  );
}
