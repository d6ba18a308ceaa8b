import { STARTING_SHAPES } from '../../job/startingShapes';
import { goTo } from '../../store/bench';
import { SHAPE_WORDS } from '../tabs/shapeWords';
import { startEmpty, startFromExample } from './otherJob';

/** Another job on the bench; undo brings this one back. */
export function StartAfresh() {
  return (
    <section className="room-area" aria-label="Start another job">
      <h2 className="area-title">Start another job</h2>
      <p className="quiet">The job on the bench makes way; undo brings it back.</p>
      <div className="links">
        <button type="button" className="link" onClick={startFromExample}>
          The finished example
        </button>
      </div>
      <div className="links">
        <span className="links-of">A new job with</span>
        {STARTING_SHAPES.map((shape) => (
          <button
            key={shape}
            type="button"
            className="link"
            onClick={() => {
              startEmpty(shape);
              goTo('parts');
            }}
          >
            {SHAPE_WORDS[shape][0].toLowerCase()}
          </button>
        ))}
      </div>
    </section>
  );
}
