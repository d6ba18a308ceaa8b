import { useBench, goTo, type Room } from '../../store/bench';
import { keysCommand, lightCommand, redoCommand, undoCommand } from '../commands';
import { isDim, useScreen } from '../screen';
import { CommandButton } from './CommandButton';
import './head.css';

const PLACES: readonly (readonly [Room, string])[] = [
  ['parts', 'Parts'],
  ['compare', 'Compare stock'],
  ['stock', 'Stock and sizes'],
  ['papers', 'Papers'],
  ['files', 'Files'],
];

export function Head() {
  const jobName = useBench(({ job }) => job.name.trim());
  const room = useBench((state) => state.room);
  const dim = useScreen(isDim);
  return (
    <header className="head">
      <span className="word-mark">Bendwright</span>
      <span className="job-name">
        Job: <b>{jobName || 'without a name'}</b>
      </span>
      <nav className="places" aria-label="Places">
        {PLACES.map(([place, words]) => (
          <button key={place} type="button" aria-current={place === room ? 'page' : undefined} onClick={() => goTo(place)}>
            {words}
          </button>
        ))}
      </nav>
      <div className="tools">
        <CommandButton command={undoCommand} />
        <CommandButton command={redoCommand} />
        <CommandButton command={keysCommand} />
        <CommandButton command={lightCommand} words={dim ? 'Day light' : 'Dim light'} />
      </div>
    </header>
  );
}
