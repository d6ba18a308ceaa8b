import { goTo, turnToPart, useBench } from '../../store/bench';
import { partOf, shapeOf } from '../../store/derived';
import { screen, useScreen } from '../screen';
import { BlankOutline } from './BlankOutline';
import { partStatus } from './partStatus';
import './tabs.css';

/** A tab that becomes the one in view slides into sight. */
const bringIntoSight = (tab: HTMLElement | null): void => tab?.scrollIntoView({ block: 'nearest', inline: 'nearest' });

/** The parts of the job as index tabs on the sheet. */
export function PartTabs() {
  const job = useBench((state) => state.job);
  const inView = useBench((state) => state.part);
  const newPartOpen = useScreen((state) => state.newPartOpen);
  return (
    <nav className="tabs" aria-label="Parts of the job">
      {job.parts.map((part, i) => {
        const status = partStatus(partOf(job, part.id));
        const { shape } = shapeOf(job, part.id);
        return (
          <button
            key={part.id}
            type="button"
            className="tab"
            ref={part.id === inView ? bringIntoSight : undefined}
            aria-current={part.id === inView && !newPartOpen ? 'true' : undefined}
            onClick={() => {
              screen.setState({ newPartOpen: false });
              turnToPart(part.id);
            }}
          >
            {shape && <BlankOutline blank={shape.blank} />}
            <span>
              <b>
                {i + 1} {part.name.trim() || 'Part'}
              </b>{' '}
              <small className={status.level}>{status.words}</small>
            </span>
          </button>
        );
      })}
      <button
        type="button"
        className="tab new"
        aria-expanded={newPartOpen}
        aria-current={newPartOpen ? 'true' : undefined}
        onClick={() => {
          goTo('parts');
          screen.setState({ newPartOpen: !newPartOpen });
        }}
      >
        <b>New part</b>
      </button>
    </nav>
  );
}
