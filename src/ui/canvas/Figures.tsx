import { useEffect, useRef } from 'react';
import { formatLength } from '../../core/units/formatLength';
import { short } from '../../drawing/words';
import { useBench } from '../../store/bench';
import { partOf } from '../../store/derived';
import { useFigures } from './figures';
import { FigureStage, zoomBy } from './FigureStage';
import { fitAll, STEP_ZOOM, useView, view, type FigureName } from './view';
import './canvas.css';

/** px: the drawings are never fitted into less than this on a narrow screen; they slide sideways instead (guide, "Layout"). */
const LEAST_WIDTH = 720;

/** px of room for both figures together: from 1280 wide all of the sheet stands on a 1440 x 900 screen; narrower, the page scrolls. */
const heightFor = (windowWidth: number, windowHeight: number): number => Math.round(windowWidth >= 1280 ? Math.min(720, Math.max(400, windowHeight * 0.5)) : Math.max(560, windowHeight * 0.6));

/** Keeps the view's room at the size of the element. */
function useRoom() {
  const element = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const measure = (): void => {
      const width = Math.floor(element.current?.clientWidth ?? 0);
      const height = heightFor(innerWidth, innerHeight);
      const leastWidth = innerWidth <= 700 ? LEAST_WIDTH : 0;
      const { room } = view.getState();
      if (width > 0 && (room.width !== width || room.height !== height || room.leastWidth !== leastWidth)) view.setState({ room: { width, height, leastWidth } });
    };
    const watch = new ResizeObserver(measure);
    if (element.current) watch.observe(element.current);
    addEventListener('resize', measure);
    measure();
    return () => {
      watch.disconnect();
      removeEventListener('resize', measure);
    };
  }, []);
  return element;
}

/** Why there is no drawing: the part's first fault. */
function NothingToDraw() {
  const job = useBench((state) => state.job);
  const part = useBench((state) => state.part);
  const says = partOf(job, part).problems[0]?.says;
  return says === undefined ? null : <p className="figure-none">{says}</p>;
}

function ZoomButtons({ figure }: { readonly figure: FigureName }) {
  const now = useFigures();
  const byHand = useView((state) => state.hand !== null);
  return (
    <span className="figure-buttons">
      <button type="button" onClick={fitAll} aria-pressed={!byHand}>
        Fit
      </button>
      <button type="button" onClick={() => now && zoomBy(figure, now, STEP_ZOOM)}>
        Closer
      </button>
      <button type="button" onClick={() => now && zoomBy(figure, now, 1 / STEP_ZOOM)}>
        Further
      </button>
    </span>
  );
}

/** The part from the side, with the dimensions that can be changed. */
export function SectionFigure() {
  const now = useFigures();
  const room = useRoom();
  const job = useBench((state) => state.job);
  const stock = now?.part.stock;
  const thickness = stock === undefined ? undefined : now?.worked.resolved.values.get(`stocks.${stock}.thickness`);
  const unit = job.units.show === 'mm' ? 'millimetres' : 'inches';
  const thick = thickness === undefined ? '' : `, ${short(formatLength(thickness, { show: job.units.show, denominator: job.units.denominator }))} thick`;
  return (
    <section className="figure" aria-labelledby="section-title">
      <header className="figure-caption">
        <h2 id="section-title">Section</h2>
        <p>looking on the near edge. Tap a figure to change it.</p>
        <p className="figure-note">
          {unit}
          {thick}
        </p>
      </header>
      <div ref={room}>{now ? <FigureStage figure="section" label="Section: left and right go leg to bend to leg, down to the holes, Enter changes" now={now} /> : <NothingToDraw />}</div>
    </section>
  );
}

/** The flat blank with its running dimensions. */
export function BlankFigure() {
  const now = useFigures();
  const room = useRoom();
  const job = useBench((state) => state.job);
  const say = (mm: number): string => formatLength(mm, { show: job.units.show, denominator: job.units.denominator });
  const bounds = now?.shape.blank.bounds;
  const first = now?.part.legs[0]?.name.trim().toLowerCase() || 'leg A';
  return (
    <section className="figure" aria-labelledby="blank-title">
      <header className="figure-caption">
        <h2 id="blank-title">Blank</h2>
        {bounds && (
          <p>
            {say(bounds.maxX - bounds.minX)} × {say(bounds.maxY - bounds.minY)}, marked face up. Running dimensions from the {first} end.
          </p>
        )}
        <ZoomButtons figure="blank" />
      </header>
      <div ref={room}>{now ? <FigureStage figure="blank" label="Blank: left and right go leg to bend to leg, down to the holes, Enter changes" now={now} /> : null}</div>
    </section>
  );
}
