import { Fragment } from 'react';
import { mainRun } from '../../job/edit/tree';
import type { JobLeg, JobPart } from '../../job/schema';
import type { FieldProblem } from '../../job/workOut';
import { useBench } from '../../store/bench';
import { LegRow, LugBendRow } from './LegRow';
import type { ThePart } from './useThePart';

const HEADS = ['Length', 'Basis', 'Angle', 'Way', 'Radius'] as const;
const RIGHT = new Set<string>(['Length', 'Angle', 'Radius']);

/** Problems of the fields that stand in the row of a leg and of the bend on its end. */
function rowProblems(part: JobPart, leg: JobLeg, next: JobLeg | undefined, problems: readonly FieldProblem[]): readonly FieldProblem[] {
  const own = `parts.${part.id}.legs.${leg.id}.length`;
  const bend = next && `parts.${part.id}.legs.${next.id}.bend.`;
  return problems.filter(({ field }) => field === own || (bend !== undefined && field.startsWith(bend) && !field.includes('.seat.')));
}

export function LegTable({ job, part, worked }: ThePart) {
  const chosen = useBench((state) => state.chosen);
  const run = mainRun(part.legs);
  const rest = part.legs.filter((leg) => !run.includes(leg));
  const row = (leg: JobLeg) => {
    const next = part.legs.find(({ bend }) => bend?.parent === leg.id && bend.edge === 'end');
    const problems = rowProblems(part, leg, next, worked.problems);
    const saysAt = `says-${leg.id}`;
    return (
      <Fragment key={leg.id}>
        {leg.bend && leg.bend.edge !== 'end' && <LugBendRow part={part} leg={leg} chosen={chosen} />}
        <LegRow part={part} leg={leg} next={next} chosen={chosen} saysAt={problems.length > 0 ? saysAt : undefined} />
        {problems.length > 0 && (
          <tr className="row-says">
            <td colSpan={6} id={saysAt}>
              {problems.map(({ field, says }) => (
                <p key={field}>{says}</p>
              ))}
            </td>
          </tr>
        )}
      </Fragment>
    );
  };
  return (
    <section className="leg-by-leg" aria-label="Leg by leg">
      <h2 className="area-title">Leg by leg</h2>
      <table className={job.units.show === 'fraction' ? 'legs fractions' : 'legs'}>
        <thead>
          <tr>
            <th scope="col">Leg</th>
            {HEADS.map((head) => (
              <th key={head} scope="col" className={RIGHT.has(head) ? 'num' : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {run.map(row)}
          {rest.map(row)}
        </tbody>
      </table>
    </section>
  );
}
