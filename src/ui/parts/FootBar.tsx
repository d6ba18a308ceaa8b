import { useThePart } from '../card/useThePart';
import { before } from '../card/CutIt';
import { downloadDxf } from '../files/downloads';
import { careCount, wrongCount } from '../tabs/partStatus';

/** On a tablet or a phone: what is left to look at and the main output, in reach of a thumb. */
export function FootBar() {
  const held = useThePart();
  if (!held) return null;
  const { job, part, worked } = held;
  const wrong = wrongCount(worked);
  const count = wrong > 0 ? wrong : careCount(worked);
  const stock = job.stocks.find(({ id }) => id === part.stock);
  return (
    <footer className="foot-bar" aria-label="In reach">
      <button
        type="button"
        className="link"
        onClick={() => document.querySelector('.checks')?.scrollIntoView({ block: 'start' })}
      >
        {count === 0 ? 'Checks are good' : `${count} to ${wrong > 0 ? 'put right' : 'look at'}`}
      </button>
      <span className="foot-stock">{stock?.name}</span>
      <button type="button" className="btn main" onClick={() => void downloadDxf(part.id)}>
        DXF for the bureau <small>{before(worked)}</small>
      </button>
    </footer>
  );
}
