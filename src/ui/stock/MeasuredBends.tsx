import { writeField } from '../../job/fields';
import type { JobRule, JobStock } from '../../job/schema';
import { settingOf } from '../../job/stockSetting';
import { apply, useBench } from '../../store/bench';
import { Does } from '../card/Does';
import { SettingField } from './SettingField';
import { stockReading } from './readings';

type Rows = Extract<JobRule, { kind: 'measured' }>['rows'];

const COLUMNS = [
  ['angle', 'Angle turned', 'angle'],
  ['radius', 'Inside radius', 'length'],
  ['deduction', 'Deduction', 'length'],
] as const;

/** The table of bends that were made and measured. */
export function MeasuredBends({ stock, rows }: { readonly stock: JobStock; readonly rows: Rows }) {
  const path = `stocks.${stock.id}.rule.rows`;
  const none = useBench(({ job }) => settingOf(job, stock).problems.find(({ field }) => field === path)?.says);
  const write = (next: Rows, label: string): void => apply((job) => writeField(job, path, next), { label });
  return (
    <div data-field={path} tabIndex={-1}>
      <table className="plain-table bends">
        <thead>
          <tr>
            <th scope="col">Bend</th>
            {COLUMNS.map(([key, words]) => (
              <th key={key} scope="col" className="num">
                {words}
              </th>
            ))}
            <th scope="col">
              <span className="unseen">Delete</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((_, i) => (
            // A measured bend has no name of its own: it is what stands in its row.
            // oxlint-disable-next-line react/no-array-index-key
            <tr key={i}>
              <th scope="row">{i + 1}</th>
              {COLUMNS.map(([key, words, wanted]) => (
                <td key={key} className="num">
                  <SettingField field={`${path}.${i}.${key}`} wanted={wanted} label={`Measured bend ${i + 1}, ${words.toLowerCase()}`} reading={stockReading(stock.id, `${path}.${i}.${key}`)} />
                </td>
              ))}
              <td className="does">
                <Does words="Delete" label={`Delete measured bend ${i + 1}`} run={() => write(rows.toSpliced(i, 1), `deleting measured bend ${i + 1}`)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {none !== undefined && <p className="text-says">{none}</p>}
      <div className="links">
        <Does
          words="Add a measured bend"
          run={() => write([...rows, rows.at(-1) ?? { angle: '90', radius: stock.radius, deduction: '2*thickness' }], 'adding a measured bend')}
        />
      </div>
    </div>
  );
}
