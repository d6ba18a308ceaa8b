import { memo, type FocusEvent } from 'react';
import { legLetter } from '../../core/part/names';
import type { Pick } from '../../drawing/entities';
import { writeField } from '../../job/fields';
import type { JobLeg, JobPart } from '../../job/schema';
import { apply, choose } from '../../store/bench';
import { EntryField } from '../fields/EntryField';
import { Choice } from '../form/Choice';
import { FieldChoice } from '../form/FieldChoice';
import { TextField } from '../form/TextField';
import { BASES, legIndex, legTitle, legWord, WAYS } from './words';

interface LegRowProps {
  readonly part: JobPart;
  readonly leg: JobLeg;
  /** The leg on its end, if there is one: the row shows the bend that joins them. */
  readonly next: JobLeg | undefined;
  readonly chosen: Pick | null;
  /** Id of the line that says what is wrong in this row. */
  readonly saysAt: string | undefined;
}

const isLit = (chosen: Pick | null, kind: Pick['kind'], leg: string | undefined): boolean => chosen?.kind === kind && chosen.leg === leg;

/** A row shows of the part no more than its letters and its own legs; the fields in it follow the job by themselves. */
const sameRow = (a: LegRowProps, b: LegRowProps): boolean =>
  a.leg === b.leg &&
  a.next === b.next &&
  a.chosen === b.chosen &&
  a.saysAt === b.saysAt &&
  a.part.id === b.part.id &&
  a.part.legs.every(({ id }, i) => id === b.part.legs[i]?.id);

export const LegRow = memo(function LegRow({ part, leg, next, chosen, saysAt }: LegRowProps) {
  const path = `parts.${part.id}.legs.${leg.id}`;
  const title = legTitle(part, leg);
  const lit = isLit(chosen, 'leg', leg.id);
  const holdWhatHasFocus = ({ target }: FocusEvent): void => {
    if (target.closest('.of-bend')) {
      if (next && !isLit(chosen, 'bend', next.id)) choose({ kind: 'bend', leg: next.id });
    } else if (!lit) choose({ kind: 'leg', leg: leg.id });
  };
  const says = saysAt === undefined ? {} : { saysAt };
  return (
    <tr className={lit ? 'lit' : undefined} aria-current={lit ? 'true' : undefined} onFocus={holdWhatHasFocus}>
      <th scope="row">
        <span className="leg-name">
          <button type="button" className="leg-pick" aria-pressed={lit} aria-label={`Leg ${legLetter(legIndex(part, leg.id))}, ${title}`}>
            {legLetter(legIndex(part, leg.id))}
          </button>
          <TextField field={`${path}.name`} label={`Name of ${legWord(part, leg.id)}`} placeholder="name" />
        </span>
      </th>
      <td className="num">
        <EntryField field={`${path}.length`} wanted="length" label={`${title}, length`} {...says} />
      </td>
      <td>
        <BothBases part={part} leg={leg} free={next === undefined} />
      </td>
      {next ? <BendCells part={part} leg={next} chosen={chosen} says={says} /> : <td colSpan={3} className="free">free end</td>}
    </tr>
  );
}, sameRow);

function BendCells({ part, leg, chosen, says }: { readonly part: JobPart; readonly leg: JobLeg; readonly chosen: Pick | null; readonly says: { readonly saysAt?: string } }) {
  const path = `parts.${part.id}.legs.${leg.id}.bend`;
  const title = `Bend ${legIndex(part, leg.id)}`;
  const lit = isLit(chosen, 'bend', leg.id) ? ' lit' : '';
  return (
    <>
      <td className={`num of-bend${lit}`}>
        <EntryField field={`${path}.angle`} wanted="angle" label={`${title}, angle`} {...says} />
      </td>
      <td className={`of-bend${lit}`}>
        <FieldChoice field={`${path}.way`} label={`${title}, way`} options={WAYS} />
      </td>
      <td className={`num of-bend${lit}`}>
        <EntryField field={`${path}.radius`} wanted="length" label={`${title}, inside radius`} {...says} />
      </td>
    </>
  );
}

/** The bend that a side lug hangs by, in a row of its own before the lug's. */
export function LugBendRow({ part, leg, chosen }: { readonly part: JobPart; readonly leg: JobLeg; readonly chosen: Pick | null }) {
  const parent = part.legs.find(({ id }) => id === leg.bend?.parent);
  return (
    <tr className="lug-bend" onFocus={() => isLit(chosen, 'bend', leg.id) || choose({ kind: 'bend', leg: leg.id })}>
      <th scope="row" colSpan={3}>
        Lug on the {leg.bend?.edge} edge of {parent && legLetter(legIndex(part, parent.id))}
      </th>
      <BendCells part={part} leg={leg} chosen={chosen} says={{}} />
    </tr>
  );
}

/** Where the length is measured to: one word for both ends where they agree, or both. The sheet of the leg sets each by itself. */
function BothBases({ part, leg, free }: { readonly part: JobPart; readonly leg: JobLeg; readonly free: boolean }) {
  const path = `parts.${part.id}.legs.${leg.id}`;
  const hasStart = leg.bend !== undefined;
  const value = hasStart ? leg.startBasis : leg.endBasis;
  const differ = hasStart && !free && leg.startBasis !== leg.endBasis;
  const label = `${legTitle(part, leg)}, basis`;
  const options: (readonly [string, string])[] = differ ? [['', `${leg.startBasis}, ${leg.endBasis}`], ...BASES] : [...BASES];
  return (
    <Choice
      label={label}
      value={differ ? '' : value}
      options={options}
      onChoose={(basis) => {
        if (basis === '') return;
        apply((job) => writeField(writeField(job, `${path}.startBasis`, basis), `${path}.endBasis`, basis), {
          label: `${label.charAt(0).toLowerCase()}${label.slice(1)} ${differ ? 'to' : `${value} to`} ${basis}`,
        });
      }}
    />
  );
}
