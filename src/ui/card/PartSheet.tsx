import { useState } from 'react';
import { copyPart } from '../../job/edit/copyPart';
import { deletePart } from '../../job/edit/deletePart';
import { movePart } from '../../job/edit/movePart';
import { reverseRun } from '../../job/edit/reverseRun';
import { apply } from '../../store/bench';
import { Choice } from '../form/Choice';
import { addHole, addLegAt } from './changes';
import { Does } from './Does';
import type { ThePart } from './useThePart';
import { legTitle } from './words';

/** What can be done with the part as a whole: shown while nothing of it is chosen. */
export function PartSheet({ job, part }: ThePart) {
  const [holeLeg, setHoleLeg] = useState(part.legs[0]?.id ?? '');
  const name = part.name.trim() || 'the part';
  const at = job.parts.indexOf(part);
  const target = part.legs.find(({ id }) => id === holeLeg) ?? part.legs[0];
  const next = job.parts[at + 1] ?? job.parts[at - 1];
  return (
    <section className="sheet-of" aria-label="The part">
      <div className="links">
        <span className="links-of" aria-hidden="true">
          Add
        </span>
        <Does words="leg before" label="Add a leg before" run={() => addLegAt(part.id, { at: 'start' })} />
        <Does words="leg after" label="Add a leg after" run={() => addLegAt(part.id, { at: 'end' })} />
        {target && (
          <span className="link-with-choice">
            <Does words="hole" label="Add a hole" run={() => addHole(part.id, target.id)} />
            in <Choice label="Leg for a new hole" value={target.id} options={part.legs.map((leg) => [leg.id, legTitle(part, leg)] as const)} onChoose={setHoleLeg} />
          </span>
        )}
      </div>
      <div className="links">
        <span className="links-of" aria-hidden="true">
          Part
        </span>
        <Does words="Copy" label="Copy the part" run={() => apply((held) => copyPart(held, part.id), { label: `copying ${name}` })} />
        <Does words="Move left" label="Move the part left" can={at > 0 || 'It is the first part already.'} run={() => apply((held) => movePart(held, part.id, at - 1), { label: `moving ${name}` })} />
        <Does
          words="Move right"
          label="Move the part right"
          can={at < job.parts.length - 1 || 'It is the last part already.'}
          run={() => apply((held) => movePart(held, part.id, at + 1), { label: `moving ${name}` })}
        />
        <Does
          words="Reverse"
          label="Reverse the order of the legs"
          can={part.legs.length > 1 || 'There is only one leg.'}
          run={() => apply((held) => reverseRun(held, part.id), { label: 'reversing the order of the legs' })}
        />
        <Does
          words="Delete"
          label="Delete the part"
          can={next !== undefined || 'The only part of a job stays.'}
          run={() => apply((held) => deletePart(held, part.id), { label: `deleting ${name}`, part: next?.id ?? part.id, chosen: null })}
        />
      </div>
    </section>
  );
}
