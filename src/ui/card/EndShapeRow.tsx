import type { JobEndShape } from '../../job/schema';
import { writeField } from '../../job/fields';
import { apply, bench } from '../../store/bench';
import { EntryField } from '../fields/EntryField';
import { Choice } from '../form/Choice';
import { Row } from '../form/Row';

const SHAPES = [
  ['square', 'square'],
  ['radius', 'corners rounded'],
  ['chamfer', 'corners cut off'],
  ['round', 'full round'],
] as const;

/** A shape of another kind; a size that was typed is kept. */
function shapeOf(kind: JobEndShape['kind'], before: JobEndShape): JobEndShape {
  const size = before.kind === 'radius' ? before.radius : before.kind === 'chamfer' ? before.size : bench.getState().job.units.plain === 'mm' ? '2' : '1/16';
  if (kind === 'radius') return { kind, radius: size };
  return kind === 'chamfer' ? { kind, size } : { kind };
}

interface EndShapeRowProps {
  readonly path: string;
  readonly name: string;
  readonly label: string;
  readonly shape: JobEndShape;
}

/** The shape of a free end. */
export function EndShapeRow({ path, name, label, shape }: EndShapeRowProps) {
  return (
    <Row name={name} wide>
      <Choice
        label={`${label}, shape`}
        value={shape.kind}
        options={SHAPES}
        field={path}
        onChoose={(kind) => apply((job) => writeField(job, path, shapeOf(kind, shape)), { label: `shape of the ${label.toLowerCase()}` })}
      />
      {shape.kind === 'radius' && <EntryField field={`${path}.radius`} wanted="length" label={`${label}, corner radius`} />}
      {shape.kind === 'chamfer' && <EntryField field={`${path}.size`} wanted="length" label={`${label}, chamfer`} />}
    </Row>
  );
}
