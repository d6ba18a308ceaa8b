import type { Job } from '../../job/schema';
import { layerName } from '../../export/dxf/layerName';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { TextField } from '../form/TextField';

const UNITS = [
  ['mm', 'millimetres'],
  ['in', 'inches'],
] as const;

const BEND_LINES = [
  ['none', 'not at all'],
  ['layer', 'as lines on their own layer'],
  ['nicks', 'as nicks in the edges'],
] as const;

const LAYERS = [
  ['outline', 'Outline'],
  ['cutouts', 'Cut-outs'],
  ['bends', 'Bend lines'],
] as const;

/** How the files for the cutter are written. */
export function DxfSettings({ job }: { readonly job: Job }) {
  const fault = (key: 'outline' | 'cutouts' | 'bends', words: string): string | undefined => {
    const checked = layerName(`dxf.layers.${key}`, words.toLowerCase(), job.dxf.layers[key]);
    return checked.ok ? undefined : checked.problem.says;
  };
  return (
    <aside className="narrow-side" aria-label="How files are written">
      <section className="room-area">
        <h2 className="area-title">How files are written</h2>
        <div className="rows one">
          <Row name="Unit">
            <FieldChoice field="dxf.unit" label="Unit of the file" options={UNITS} />
          </Row>
          <Row name="Bends are shown">
            <FieldChoice field="dxf.bendLines" label="Bends are shown" options={BEND_LINES} />
          </Row>
        </div>
        <p className="quiet">Ask the bureau what it wants. A line on a layer is marked or left out by them; a nick is cut and shows where to bend.</p>
      </section>
      <section className="room-area">
        <h2 className="area-title">Layers</h2>
        <div className="rows one">
          {LAYERS.map(([key, words]) => (
            <Row key={key} name={words}>
              <TextField field={`dxf.layers.${key}`} label={`Layer of the ${words.toLowerCase()}`} says={fault(key, words)} />
            </Row>
          ))}
        </div>
        <p className="quiet">Outlines are closed lines and true arcs, holes are true circles. Nothing is in the file that the bureau has to delete.</p>
      </section>
      <section className="room-area">
        <h2 className="area-title">Cautions</h2>
        <p className="quiet">
          Laser-cut edges are sharp and hold heat for a while: wear gloves, deburr before bending. Bent fittings from here are not for lifting or holding
          people; structural and pressure work is out of scope.
        </p>
      </section>
      <section className="room-area">
        <h2 className="area-title">Lettering</h2>
        <p className="quiet">
          Atkinson Hyperlegible Next (<a href="./licences/atkinson-hyperlegible-next-OFL.txt">licence</a>) and Besley (
          <a href="./licences/besley-OFL.txt">licence</a>), both under the SIL Open Font License. In PDF files DejaVu
          Sans Condensed (<a href="./licences/dejavu-licence.txt">licence</a>).
        </p>
      </section>
    </aside>
  );
}
