import { useState } from 'react';
import { addPart } from '../../job/edit/addPart';
import { STARTING_SHAPES, startingPart, type StartingShape } from '../../job/startingShapes';
import { apply, bench, useBench } from '../../store/bench';
import { Choice } from '../form/Choice';
import { say, screen } from '../screen';
import { TinySection } from './TinySection';
import { SHAPE_WORDS } from './shapeWords';
import './newPart.css';

/** Choosing a shape for a new part: lies on the sheet above the drawings. */
export function NewPart() {
  const job = useBench((state) => state.job);
  const part = useBench((state) => state.part);
  const [stock, setStock] = useState(job.parts.find(({ id }) => id === part)?.stock ?? job.stocks[0]?.id ?? '');
  const inJob = job.stocks.some(({ id }) => id === stock) ? stock : (job.stocks[0]?.id ?? '');
  const close = (): void => screen.setState({ newPartOpen: false });
  const begin = (shape: StartingShape): void => {
    const id = addPart(bench.getState().job, shape, inJob).parts.at(-1)?.id;
    if (id === undefined) return;
    const [name] = SHAPE_WORDS[shape];
    apply((held) => addPart(held, shape, inJob), { label: `new part, ${name}`, part: id, chosen: null });
    close();
    say(`New part: ${name}.`);
  };
  return (
    <section className="new-part" aria-labelledby="new-part-title">
      <div className="cap">
        <h2 id="new-part-title">New part</h2>
        <p>Begin with a shape; every size can be changed.</p>
        <span className="right new-part-stock">
          cut from <Choice label="Stock of the new part" value={inJob} options={job.stocks.map(({ id, name }) => [id, name] as const)} onChoose={setStock} />
        </span>
        <button type="button" className="link" onClick={close}>
          Close
        </button>
      </div>
      <ul>
        {STARTING_SHAPES.map((shape) => (
          <li key={shape}>
            <button type="button" onClick={() => begin(shape)}>
              <TinySection part={startingPart(shape, { id: 'new', stock: inJob, plain: job.units.plain })} job={job} />
              <b>{SHAPE_WORDS[shape][0]}</b> <small>{SHAPE_WORDS[shape][1]}</small>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
