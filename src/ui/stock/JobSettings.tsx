import { setPlainUnit } from '../../job/edit/setPlainUnit';
import { writeField } from '../../job/fields';
import type { Job } from '../../job/schema';
import { apply } from '../../store/bench';
import { Choice } from '../form/Choice';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { TextField } from '../form/TextField';
import { scaleReading, stepReading } from './readings';
import { SettingField } from './SettingField';

const PLAIN = [
  ['mm', 'millimetres'],
  ['in', 'inches'],
] as const;

const SHOW = [
  ['mm', 'millimetres'],
  ['inch', 'decimal inches'],
  ['fraction', 'inches and fractions'],
] as const;

const DENOMINATORS = [8, 16, 32, 64, 128] as const;

/** What holds for the whole job. */
export function JobSettings({ job }: { readonly job: Job }) {
  return (
    <aside className="narrow-side" aria-label="The job">
      <section className="room-area">
        <h2 className="area-title">The job</h2>
        <div className="rows one">
          <Row name="Name">
            <TextField field="name" label="Name of the job" placeholder="without a name" />
          </Row>
          <Row name="Scale, 1 to">
            <SettingField field="scale" wanted="number" label="Scale" reading={scaleReading} />
          </Row>
        </div>
        <p className="quiet">After the word full an entry is a full-size dimension and is divided by the scale: full 6in.</p>
      </section>
      <section className="room-area">
        <h2 className="area-title">Units</h2>
        <div className="rows one">
          <Row name="A plain number is">
            <Choice label="A plain number is" value={job.units.plain} options={PLAIN} field="units.plain" onChoose={(to) => apply((held) => setPlainUnit(held, to), { label: `plain numbers to ${to === 'mm' ? 'millimetres' : 'inches'}` })} />
          </Row>
          <Row name="Lengths are shown in">
            <FieldChoice field="units.show" label="Lengths are shown in" options={SHOW} />
          </Row>
          {job.units.show === 'fraction' && (
            <Row name="Finest fraction">
              <Choice
                label="Finest fraction"
                value={String(job.units.denominator)}
                options={DENOMINATORS.map((each) => [String(each), `1/${each}`] as const)}
                onChoose={(each) => apply((held) => writeField(held, 'units.denominator', Number(each)), { label: `finest fraction to 1/${each}` })}
              />
            </Row>
          )}
        </div>
        <p className="quiet">Another plain unit writes the old one into every entry that relied on it, so that nothing changes size. A unit in an entry always holds: 3/8in, 20mm.</p>
      </section>
      <section className="room-area">
        <h2 className="area-title">Dragging</h2>
        <div className="rows one">
          <Row name="Lengths go by">
            <SettingField field="step.length" wanted="length" label="Step for lengths" reading={stepReading('length')} />
          </Row>
          <Row name="Angles go by">
            <SettingField field="step.angle" wanted="angle" label="Step for angles" reading={stepReading('angle')} />
          </Row>
        </div>
        <p className="quiet">Hold Alt while dragging for no steps at all.</p>
      </section>
    </aside>
  );
}
