import type { JobBend } from '../../job/schema';
import { writeField } from '../../job/fields';
import { apply } from '../../store/bench';
import { EntryField } from '../fields/EntryField';
import { Choice } from '../form/Choice';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { BASES } from './words';

type Seat = NonNullable<JobBend['seat']>;

const RELIEFS = [
  ['none', 'none'],
  ['square', 'square'],
  ['round', 'round'],
] as const;

const ALONG = [
  ['start', 'from the start'],
  ['middle', 'from the middle'],
  ['end', 'from the end'],
] as const;

const EDGES = [
  ['left', 'left'],
  ['right', 'right'],
] as const;

interface SeatRowsProps {
  readonly path: string;
  readonly edgePath: string;
  readonly title: string;
  readonly seat: Seat;
}

/** Where a side lug sits on its parent's edge, and the notches at the ends of its bend. */
export function SeatRows({ path, edgePath, title, seat }: SeatRowsProps) {
  const { relief } = seat;
  const setRelief = (kind: Seat['relief']['kind']): void => {
    const size = relief.kind === 'none' ? { width: 'thickness', depth: 'thickness' } : { width: relief.width, depth: relief.depth };
    apply((job) => writeField(job, `${path}.relief`, kind === 'none' ? { kind } : { kind, ...size }), { label: `${title.toLowerCase()}, relief to ${kind}` });
  };
  return (
    <>
      <Row name="Edge">
        <FieldChoice field={edgePath} label={`${title}, edge of the leg it hangs on`} options={EDGES} />
      </Row>
      <Row name="Edge is at">
        <FieldChoice field={`${path}.basis`} label={`${title}, the edge is the lug's`} options={BASES} />
      </Row>
      <Row name="Along" wide>
        <EntryField field={`${path}.along.distance`} wanted="length" label={`${title}, place along`} />
        <FieldChoice field={`${path}.along.from`} label={`${title}, place along counted`} options={ALONG} />
        <FieldChoice field={`${path}.along.basis`} label={`${title}, place along, basis`} options={BASES} />
      </Row>
      <Row name="Relief" wide>
        <Choice label={`${title}, relief`} value={relief.kind} options={RELIEFS} onChoose={setRelief} />
        {relief.kind !== 'none' && (
          <>
            <EntryField field={`${path}.relief.width`} wanted="length" label={`${title}, relief width`} />
            <EntryField field={`${path}.relief.depth`} wanted="length" label={`${title}, relief depth`} />
          </>
        )}
      </Row>
    </>
  );
}
