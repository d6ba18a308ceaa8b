import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { formatLength } from '../../core/units/formatLength';
import { kept, panned, STEP_ZOOM, zoomedAbout, type FigureName, type Room, type Sight } from '../canvas/view';
import { LineSample } from './LineSample';
import { fittedOverlays, overlaysAt } from './overlays';
import { OverlayStage } from './OverlayStage';
import type { Compared } from './useComparison';
import '../canvas/canvas.css';

/** px: as on the main sheet, drawings on a narrow screen keep their size and slide sideways. */
const LEAST_WIDTH = 720;

/** px for both overlays; from 1280 wide the table has its share of the screen. */
const heightFor = (width: number, height: number): number => Math.round(width >= 1280 ? Math.min(620, Math.max(300, height * 0.42)) : Math.max(420, height * 0.5));

function useRoom() {
  const element = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState<Room>({ width: 0, height: 0, leastWidth: 0 });
  useEffect(() => {
    const measure = (): void => {
      const width = Math.floor(element.current?.clientWidth ?? 0);
      const next = { width, height: heightFor(innerWidth, innerHeight), leastWidth: innerWidth <= 700 ? LEAST_WIDTH : 0 };
      setRoom((before) => (before.width === next.width && before.height === next.height && before.leastWidth === next.leastWidth ? before : next));
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
  return { element, room };
}

interface Props extends Compared {
  readonly lit: string | undefined;
  readonly onLetter: (letter: string | undefined) => void;
}

/** Section over blank, all stocks in each, at one scale. */
export function OverlayFigures({ job, part, comparison, stocks, lit, onLetter }: Props) {
  const { element, room } = useRoom();
  const [hand, setHand] = useState<{ readonly part: string; readonly sight: Sight } | null>(null);
  const fitted = useMemo(() => fittedOverlays(comparison, room), [comparison, room]);
  const byHand = hand?.part === part.id;
  const sight = byHand ? hand.sight : fitted;
  const drawings = sight && overlaysAt(comparison, sight.zoom);

  const move = useCallback(
    (next: (sight: Sight) => Sight) => {
      if (!fitted) return;
      setHand((before) => {
        const from = before?.part === part.id ? before.sight : fitted;
        const to = next(from);
        return { part: part.id, sight: kept(to, overlaysAt(comparison, to.zoom), room.width, fitted.height) };
      });
    },
    [comparison, fitted, part.id, room.width],
  );
  const zoomBy = (factor: number): void =>
    move((from) => zoomedAbout(from, 'blank', fitted?.height.blank ?? 0, { x: room.width / 2, y: (fitted?.height.blank ?? 0) / 2 }, factor));

  const stage = (figure: FigureName, label: string) =>
    drawings && sight && fitted ? (
      <OverlayStage
        figure={figure}
        label={label}
        drawing={drawings[figure]}
        sight={sight}
        height={fitted.height[figure]}
        lit={lit}
        onLetter={onLetter}
        onPan={(dx, dy) => move((from) => panned(from, figure, dx, dy))}
        onZoom={(factor, at) => move((from) => zoomedAbout(from, figure, fitted.height[figure], at, factor))}
        byHand={byHand}
      />
    ) : null;

  const names = stocks.map(({ name }) => name.trim() || 'stock without a name').join(', ');
  const say = (mm: number): string => formatLength(mm, { show: job.units.show, denominator: job.units.denominator });
  const lengths = [...new Set(comparison.stocks.flatMap(({ worked }) => (worked.shape ? [say(worked.shape.blank.bounds.maxX - worked.shape.blank.bounds.minX)] : [])))];
  const nothing = !comparison.stocks.some(({ worked }) => worked.shape);
  return (
    <div className="overlays" ref={element}>
      <section className="figure" aria-label="Sections, overlaid">
        <header className="figure-caption">
          <h2>Sections</h2>
          <p>one over the other, from the marked face of leg A</p>
          <ul className="overlay-key" aria-label="Lines">
            {stocks.map(({ id, name }, i) => (
              <li key={id}>
                <LineSample place={i} /> {name.trim() || 'Stock without a name'}
              </li>
            ))}
          </ul>
        </header>
        {nothing ? <p className="figure-none">{comparison.stocks[0]?.worked.problems[0]?.says ?? 'This part cannot be laid out in any of these stocks.'}</p> : stage('section', `Sections of ${part.name} in ${names}, one over the other`)}
      </section>
      <section className="figure" aria-label="Blanks, overlaid">
        <header className="figure-caption">
          <h2>Blanks</h2>
          <p>{lengths.length > 0 && `${lengths.join(', ')} long, laid on the datum`}</p>
          <span className="figure-buttons">
            <button type="button" onClick={() => setHand(null)} aria-pressed={!byHand}>
              Fit
            </button>
            <button type="button" onClick={() => zoomBy(STEP_ZOOM)}>
              Closer
            </button>
            <button type="button" onClick={() => zoomBy(1 / STEP_ZOOM)}>
              Further
            </button>
          </span>
        </header>
        {stage('blank', `Blanks of ${part.name} in ${names}, one over the other`)}
      </section>
    </div>
  );
}
