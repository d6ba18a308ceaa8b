import { formatLength } from '../../core/units/formatLength';
import type { JobBend, JobLeg } from '../../job/schema';
import { choose } from '../../store/bench';
import { EntryField } from '../fields/EntryField';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { Does } from './Does';
import { SeatRows } from './SeatRows';
import type { ThePart } from './useThePart';
import { legIndex, legTitle, WAYS } from './words';

interface BendSheetProps extends ThePart {
  /** The leg that the bend leads to. */
  readonly leg: JobLeg;
  readonly bend: JobBend;
}

export function BendSheet({ job, part, worked, leg, bend }: BendSheetProps) {
  const index = legIndex(part, leg.id);
  const path = `parts.${part.id}.legs.${leg.id}.bend`;
  const title = `Bend ${index}`;
  const parent = part.legs.find(({ id }) => id === bend.parent);
  const figures = worked.shape?.layout.legs[index]?.bend?.figures;
  const length = (mm: number): string => formatLength(mm, { show: job.units.show, denominator: job.units.denominator, places: 3 });
  return (
    <section className="sheet-of" aria-label={`Sheet of bend ${index}`}>
      <h2 className="area-title">
        {title} <small>{parent && `from ${legTitle(part, parent)} to ${legTitle(part, leg)}`}</small>
      </h2>
      <div className="rows">
        <Row name="Angle">
          <EntryField field={`${path}.angle`} wanted="angle" label={`${title}, angle turned from flat`} />
        </Row>
        <Row name="Way">
          <FieldChoice field={`${path}.way`} label={`${title}, way`} options={WAYS} />
        </Row>
        <Row name="Radius" wide>
          <EntryField field={`${path}.radius`} wanted="length" label={`${title}, inside radius`} />
        </Row>
        {bend.seat && <SeatRows path={`${path}.seat`} edgePath={`${path}.edge`} title={title} seat={bend.seat} />}
      </div>
      {figures && (
        <dl className="figures" aria-label={`Figures of bend ${index}, worked out`}>
          <Figure name="K" value={figures.k.toFixed(3)} />
          <Figure name="Allowance" value={length(figures.allowance)} />
          <Figure name="Setback, outside" value={length(figures.outsideSetback)} />
          <Figure name="Deduction" value={length(figures.deduction)} />
        </dl>
      )}
      <div className="links">
        {parent && <Does words={`To ${legTitle(part, parent)}`} run={() => choose({ kind: 'leg', leg: parent.id })} />}
        <Does words={`To ${legTitle(part, leg)}`} run={() => choose({ kind: 'leg', leg: leg.id })} />
      </div>
    </section>
  );
}

/** A figure that is worked out and cannot be typed: in brackets, as on the drawing. */
const Figure = ({ name, value }: { readonly name: string; readonly value: string }) => (
  <div>
    <dt>{name}</dt>
    <dd>({value})</dd>
  </div>
);
