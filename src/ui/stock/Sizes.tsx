import { formatAngle, formatLength, unitWord } from '../../core/units/formatLength';
import { addSize } from '../../job/edit/addSize';
import { deleteSize } from '../../job/edit/deleteSize';
import type { Job } from '../../job/schema';
import { apply } from '../../store/bench';
import { Does } from '../card/Does';
import { plainText } from '../fields/nudge';
import { TextField } from '../form/TextField';
import { sizeReading, sizeValue } from './readings';
import { SettingField } from './SettingField';

/** A name that no size has yet. */
function freeName(job: Job): string {
  const taken = new Set(job.sizes.map(({ name }) => name));
  let number = 1;
  while (taken.has(`size${number}`)) number += 1;
  return `size${number}`;
}

function worked(job: Job, id: string): string {
  const value = sizeValue(job, id);
  if (!value.ok || !Number.isFinite(value.value.value)) return '';
  switch (value.value.dimension) {
    case 'length':
      return `${formatLength(value.value.value, { show: job.units.show, denominator: job.units.denominator })} ${unitWord(job.units)}`;
    case 'angle':
      return formatAngle(value.value.value);
    default:
      return plainText(value.value.value, 6);
  }
}

/** Sizes that have a name and can be used in every entry of the job. */
export function Sizes({ job }: { readonly job: Job }) {
  const nameFault = (id: string): string | undefined => {
    const value = sizeValue(job, id);
    return !value.ok && value.problem.field === `sizes.${id}.name` ? value.problem.says : undefined;
  };
  return (
    <section className="room-area" aria-label="Named sizes">
      <div className="room-head">
        <h2 className="area-title">Named sizes</h2>
        <p className="quiet">Use a name in any entry: 2*pitch + 3.</p>
        <div className="links">
          <Does
            words="Add a size"
            run={() => apply((held) => addSize(held, { name: freeName(held), text: held.units.plain === 'mm' ? '10' : '1/2', note: '' }), { label: 'adding a named size' })}
          />
        </div>
      </div>
      {job.sizes.length > 0 && (
        <table className="plain-table sizes">
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Entry</th>
              <th scope="col" className="num">
                Comes to
              </th>
              <th scope="col">Note</th>
              <th scope="col">
                <span className="unseen">Delete</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {job.sizes.map(({ id, name }) => (
              <tr key={id}>
                <td>
                  <TextField field={`sizes.${id}.name`} label="Name of the size" says={nameFault(id)} />
                </td>
                <td>
                  <SettingField field={`sizes.${id}.text`} wanted="number" label={`Size ${name}`} reading={sizeReading(id)} asTyped />
                </td>
                <td className="num worked-out">{worked(job, id)}</td>
                <td>
                  <TextField field={`sizes.${id}.note`} label={`Note on ${name}`} placeholder="no note" />
                </td>
                <td className="does">
                  <Does words="Delete" label={`Delete size ${name}`} run={() => apply((held) => deleteSize(held, id), { label: `deleting size ${name}` })} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
