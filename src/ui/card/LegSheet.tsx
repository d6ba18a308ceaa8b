import { useState } from 'react';
import { mainRun } from '../../job/edit/tree';
import { moveLeg } from '../../job/edit/moveLeg';
import { reverseRun } from '../../job/edit/reverseRun';
import type { JobLeg } from '../../job/schema';
import { apply, bench, choose } from '../../store/bench';
import { EntryField } from '../fields/EntryField';
import { FieldChoice } from '../form/FieldChoice';
import { Row } from '../form/Row';
import { addHole, addLegAt, addLugOn, splitInMiddle } from './changes';
import { deletable, deleteChosen } from './deleteChosen';
import { Does } from './Does';
import { EndShapeRow } from './EndShapeRow';
import type { ThePart } from './useThePart';
import { BASES, cutoutTitle, legTitle, legWord } from './words';

export function LegSheet({ part, leg }: ThePart & { readonly leg: JobLeg }) {
  const path = `parts.${part.id}.legs.${leg.id}`;
  const title = legTitle(part, leg);
  const hasEnd = part.legs.some(({ bend }) => bend?.parent === leg.id && bend.edge === 'end');
  return (
    <section className="sheet-of" aria-label={`Sheet of ${legWord(part, leg.id)}`}>
      <h2 className="area-title">
        {title} {leg.name.trim() && <small>{legWord(part, leg.id)}</small>}
      </h2>
      <LegActions part={part} leg={leg} />
      <div className="rows">
        {leg.bend && (
          <Row name="Start to">
            <FieldChoice field={`${path}.startBasis`} label={`${title}, start measured to`} options={BASES} />
          </Row>
        )}
        {hasEnd && (
          <Row name="End to">
            <FieldChoice field={`${path}.endBasis`} label={`${title}, end measured to`} options={BASES} />
          </Row>
        )}
        {!leg.bend && <EndShapeRow path={`${path}.startShape`} name="Start is" label={`${title}, start`} shape={leg.startShape} />}
        {!hasEnd && <EndShapeRow path={`${path}.endShape`} name="End is" label={`${title}, end`} shape={leg.endShape} />}
        <WidthRows path={path} title={title} leg={leg} />
      </div>
      <div className="links">
        {leg.cutouts.map((cutout, i) => (
          <button key={cutout.id} type="button" className="link" onClick={() => choose({ kind: 'cutout', leg: leg.id, cutout: cutout.id })}>
            {cutoutTitle(cutout, i)}
          </button>
        ))}
        <Does words="Add a hole" run={() => addHole(part.id, leg.id)} />
        <Does words="Add lug, left" run={() => addLugOn(part.id, leg.id, 'left')} />
        <Does words="Add lug, right" run={() => addLugOn(part.id, leg.id, 'right')} />
      </div>
    </section>
  );
}

/** One width while both ends are alike; two once the leg is to taper. */
function WidthRows({ path, title, leg }: { readonly path: string; readonly title: string; readonly leg: JobLeg }) {
  const [tapers, setTapers] = useState(leg.startWidth !== leg.endWidth);
  if (!tapers && leg.startWidth === leg.endWidth) {
    return (
      <>
        <Row name="Width">
          <EntryField field={`${path}.startWidth`} also={[`${path}.endWidth`]} wanted="length" label={`${title}, width`} />
        </Row>
        <div className="links">
          <Does words="Taper it" label={`${title}: a width for each end`} run={() => setTapers(true)} />
        </div>
      </>
    );
  }
  return (
    <>
      <Row name="Start wide">
        <EntryField field={`${path}.startWidth`} wanted="length" label={`${title}, width at the start`} />
      </Row>
      <Row name="End wide">
        <EntryField field={`${path}.endWidth`} wanted="length" label={`${title}, width at the end`} />
      </Row>
    </>
  );
}

function LegActions({ part, leg }: Pick<ThePart, 'part'> & { readonly leg: JobLeg }) {
  const run = mainRun(part.legs);
  const at = run.findIndex(({ id }) => id === leg.id);
  const title = legTitle(part, leg);
  const inRun = at >= 0 || 'A side lug keeps its place on its edge.';
  const move = (to: number): void => apply((job) => moveLeg(job, part.id, leg.id, to), { label: `moving ${title}` });
  return (
    <div className="links">
      <Does words="Add leg after" run={() => addLegAt(part.id, { at: 'after', leg: leg.id })} />
      <Does words="Split by a bend" label="Split the leg in its middle by a bend of 90°" run={() => splitInMiddle(part.id, leg)} />
      <Does words="Move up" can={inRun === true ? at > 0 || 'It is the first leg already.' : inRun} run={() => move(at - 1)} />
      <Does words="Move down" can={inRun === true ? at < run.length - 1 || 'It is the last leg already.' : inRun} run={() => move(at + 1)} />
      <Does
        words="Reverse order"
        can={run.length > 1 || 'There is only one leg.'}
        run={() => apply((job) => reverseRun(job, part.id), { label: 'reversing the order of the legs' })}
      />
      <Does words="Delete" can={deletable({ ...bench.getState(), part: part.id, chosen: { kind: 'leg', leg: leg.id } })} run={deleteChosen} />
    </div>
  );
}
