import { deleteChosen } from './deleteChosen';
import { moveCutout } from '../../job/edit/moveCutout';
import { writeField } from '../../job/fields';
import type { JobCutout, JobLeg } from '../../job/schema';
import { apply, choose } from '../../store/bench';
import { EntryField } from '../fields/EntryField';
import { Choice } from '../form/Choice';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { TextField } from '../form/TextField';
import { addHole, copyHole } from './changes';
import { patternOf, shapeOf } from './cutoutKinds';
import { Does } from './Does';
import { PatternRows } from './PatternRows';
import type { ThePart } from './useThePart';
import { BASES, cutoutTitle, legTitle, legWord } from './words';

const KINDS = [
  ['round', 'round hole'],
  ['slot', 'slot'],
  ['rectangle', 'rectangle'],
] as const;

const ALONG = [
  ['start', 'from the start'],
  ['middle', 'from the middle'],
  ['end', 'from the end'],
] as const;

const ACROSS = [
  ['centre', 'from the centre line'],
  ['left', 'from the left edge'],
  ['right', 'from the right edge'],
] as const;

const REPEATS = [
  ['single', 'once'],
  ['row', 'in a row'],
  ['grid', 'in a grid'],
] as const;

interface CutoutSheetProps extends ThePart {
  readonly leg: JobLeg;
  readonly cutout: JobCutout;
}

export function CutoutSheet({ job, part, leg, cutout }: CutoutSheetProps) {
  const path = `parts.${part.id}.legs.${leg.id}.cutouts.${cutout.id}`;
  const title = cutoutTitle(cutout, leg.cutouts.indexOf(cutout));
  const metric = job.units.plain === 'mm';
  const { shape, pattern } = cutout;
  const size = (key: string, words: string, wanted: 'length' | 'angle' = 'length') => (
    <Row name={words}>
      <EntryField key={key} field={`${path}.shape.${key}`} wanted={wanted} label={`${title}, ${words.toLowerCase()}`} />
    </Row>
  );
  return (
    <section className="sheet-of" aria-label={`Sheet of ${title}`}>
      <h2 className="area-title">
        {title} <small>in {legTitle(part, leg)}</small>
      </h2>
      <div className="links">
        <Does words="Copy" run={() => copyHole(part.id, leg.id, cutout.id)} />
        <Does words="Delete" run={deleteChosen} />
        <Does words="Add another" run={() => addHole(part.id, leg.id)} />
        <Does words={`To ${legTitle(part, leg)}`} run={() => choose({ kind: 'leg', leg: leg.id })} />
      </div>
      <div className="rows">
        <Row name="Name">
          <TextField field={`${path}.name`} label={`Name of ${title}`} placeholder={title} />
        </Row>
        <Row name="Kind">
          <Choice
            label={`${title}, kind`}
            value={shape.kind}
            options={KINDS}
            field={`${path}.shape`}
            onChoose={(kind) => apply((held) => writeField(held, `${path}.shape`, shapeOf(kind, shape)), { label: `kind of ${title}` })}
          />
        </Row>
        {shape.kind === 'round' && size('diameter', 'Diameter')}
        {shape.kind !== 'round' && (
          <>
            {size('length', 'Length')}
            {size('width', 'Width')}
            {shape.kind === 'rectangle' && size('corner', 'Corners')}
            {size('turn', 'Turned', 'angle')}
          </>
        )}
        <Row name="Along" wide>
          <EntryField field={`${path}.along.distance`} wanted="length" label={`${title}, distance along`} />
          <FieldChoice field={`${path}.along.from`} label={`${title}, along counted`} options={ALONG} />
          <FieldChoice field={`${path}.along.basis`} label={`${title}, along, basis`} options={BASES} />
        </Row>
        <Row name="Across" wide>
          <EntryField field={`${path}.across.distance`} wanted="length" label={`${title}, distance across`} />
          <FieldChoice field={`${path}.across.from`} label={`${title}, across counted`} options={ACROSS} />
        </Row>
        <Row name="Made" wide>
          <Choice
            label={`${title}, made`}
            value={pattern.kind}
            options={REPEATS}
            field={`${path}.pattern`}
            onChoose={(kind) => apply((held) => writeField(held, `${path}.pattern`, patternOf(kind, pattern, metric)), { label: `repeats of ${title}` })}
          />
        </Row>
        <PatternRows path={`${path}.pattern`} title={title} pattern={pattern} />
        {part.legs.length > 1 && (
          <Row name="In leg" wide>
            <Choice
              label={`${title}, in leg`}
              value={leg.id}
              options={part.legs.map((each) => [each.id, legTitle(part, each)] as const)}
              onChoose={(to) =>
                apply((held) => moveCutout(held, part.id, leg.id, cutout.id, to), { label: `moving ${title} to ${legWord(part, to)}`, chosen: { kind: 'leg', leg: to } })
              }
            />
          </Row>
        )}
      </div>
    </section>
  );
}
