import { useEffect, useLayoutEffect, useRef, useState, type KeyboardEvent, type MouseEvent } from 'react';
import type { TextEntity } from '../../drawing/entities';
import { choose, edit, useBench } from '../../store/bench';
import { fieldName } from '../fields/fieldName';
import { figuresNow, type FiguresNow } from './figures';
import { attachGestures, type Live } from './gestures';
import { InPlaceField } from './InPlaceField';
import { makePainter, type Painter } from './paintDrawing';
import { fitAll, kept, slidTo, STEP_ZOOM, toScreen, useView, view, zoomedAbout, type FigureName } from './view';
import { boundsOf, figureAt } from './whereabouts';
import { legByLetter, mainField, spoken, stepped, type Step } from './walk';
import './canvas.css';

interface Props {
  readonly figure: FigureName;
  readonly label: string;
  readonly now: FiguresNow;
}

const ARROWS: Readonly<Record<string, Step>> = { ArrowLeft: 'left', ArrowRight: 'right', ArrowUp: 'up', ArrowDown: 'down' };

/** px: on a screen no wider than this the field docks under the section (guide, "Layout"). */
const PHONE = '(max-width: 700px)';

/** Closer or further about the middle of a figure. */
export function zoomBy(figure: FigureName, now: FiguresNow, factor: number): void {
  const { width } = view.getState().room;
  const next = zoomedAbout(now.sight, figure, now.height[figure], { x: width / 2, y: now.height[figure] / 2 }, factor);
  view.setState({ hand: kept(next, now.drawings, width, now.height) });
}

const nameOf = (now: FiguresNow) => (entity: TextEntity): string => {
  const figure = entity.suffix ? `${entity.text} ${entity.suffix}` : entity.text;
  const name = entity.field === undefined ? undefined : fieldName(now.job, entity.field);
  return name ? `${figure}: ${name.label.charAt(0).toLowerCase()}${name.label.slice(1)}, change` : figure;
};

/** px at the right edge where the figure beside the pointer goes over to its left. */
const LIVE_ROOM = 220;

const liveClass = (live: Live, width: number): string => ['figure-live', live.touch ? 'by-touch' : live.x > width - LIVE_ROOM ? 'to-left' : ''].filter(Boolean).join(' ');

/** One drawing on show. React owns the empty element; the painter owns what is in it. */
export function FigureStage({ figure, label, now }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const paper = useRef<HTMLDivElement>(null);
  const painter = useRef<Painter | null>(null);
  const [live, setLive] = useState<Live | null>(null);
  const chosen = useBench((state) => state.chosen);
  const editing = useBench((state) => state.editing);
  const active = useView((state) => state.active);
  const ring = useView((state) => state.ring);
  const { sight, drawings } = now;
  const height = now.height[figure];
  const drawing = drawings[figure];
  const px = 1 / sight.zoom;

  const other: FigureName = figure === 'section' ? 'blank' : 'section';
  const shows = (name: FigureName): boolean => editing !== null && figureAt(drawings[name], editing, px) !== undefined;
  // A field opens in the figure last used, or in the one that shows it, or under the section where neither does.
  const opensHere = editing !== null && (shows(figure) ? active === figure || !shows(other) : !shows(other) && figure === 'section');
  const phone = matchMedia(PHONE).matches;
  const middle = opensHere && editing !== null && !phone ? figureAt(drawing, editing, px) : undefined;
  const fieldAt = middle && toScreen(sight, figure, height, middle);
  const opened = opensHere ? editing : null;

  useLayoutEffect(() => {
    if (!paper.current) return undefined;
    const made = makePainter(paper.current);
    painter.current = made;
    return () => {
      made.clear();
      painter.current = null;
    };
  }, []);

  useLayoutEffect(() => {
    const origin = toScreen(sight, figure, height, { x: 0, y: 0 });
    painter.current?.move(origin.x, origin.y);
  }, [sight, figure, height]);

  useLayoutEffect(() => {
    painter.current?.paint(drawing.entities, { zoom: sight.zoom, chosen, editing: phone ? null : opened, nameOf: nameOf(now) });
  }, [drawing, sight.zoom, chosen, opened, phone, now]);

  useEffect(() => (host.current ? attachGestures(host.current, { figure, now: figuresNow, live: setLive }) : undefined), [figure]);

  // What is chosen elsewhere slides into sight; both figures slide together.
  useEffect(() => {
    const at = figuresNow();
    const bounds = chosen && at && boundsOf(at.drawings[figure], chosen);
    if (!at || !bounds) return;
    const { width } = view.getState().room;
    const left = slidTo(at.sight.left, at.sight.zoom, width, bounds.minX, bounds.maxX);
    const seen = (bounds.maxX - at.sight.left) * at.sight.zoom > 0 && (bounds.minX - at.sight.left) * at.sight.zoom < width;
    const whole = bounds.minX >= at.sight.left && bounds.maxX <= at.sight.left + width / at.sight.zoom;
    if (left !== at.sight.left && !(seen && whole)) view.setState({ hand: { zoom: at.sight.zoom, left, mid: at.sight.mid } });
  }, [chosen, figure]);

  useEffect(() => {
    const at = figuresNow();
    if (!ring || !at || !boundsOf(at.drawings[figure], ring.pick)) return;
    if (figure === 'blank' && boundsOf(at.drawings.section, ring.pick)) return;
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    host.current?.scrollIntoView({ block: 'nearest', behavior: still ? 'auto' : 'smooth' });
  }, [ring, figure]);

  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey) return;
    view.setState({ active: figure });
    const field = event.target instanceof Element ? event.target.closest('[data-field]')?.getAttribute('data-field') : null;
    const step = ARROWS[event.key];
    const letter = event.altKey ? undefined : legByLetter(now.part, event.key);
    if (step) choose(stepped(now.part, chosen, step));
    else if ((event.key === 'Enter' || event.key === ' ') && field) edit(field);
    else if (event.key === 'Enter' || event.key === 'F2') {
      const pick = chosen ?? stepped(now.part, null, 'right');
      choose(pick);
      if (pick) edit(mainField(now.part.id, pick));
    } else if (letter) choose(letter);
    else if (event.key === '+' || event.key === '=') zoomBy(figure, now, STEP_ZOOM);
    else if (event.key === '-' || event.key === '−') zoomBy(figure, now, 1 / STEP_ZOOM);
    else if (event.key === '0') fitAll();
    else if (event.key === 'Escape') choose(null);
    else return;
    event.preventDefault();
  };

  /** A screen reader presses a figure without a pointer. */
  const onClick = (event: MouseEvent<HTMLDivElement>): void => {
    if (event.detail !== 0 || !(event.target instanceof Element)) return;
    const field = event.target.closest('[data-field]')?.getAttribute('data-field');
    if (!field) return;
    view.setState({ active: figure });
    edit(field);
  };

  const ringed = ring && boundsOf(drawing, ring.pick);
  const from = ringed && toScreen(sight, figure, height, { x: ringed.minX, y: ringed.maxY });
  const to = ringed && toScreen(sight, figure, height, { x: ringed.maxX, y: ringed.minY });

  return (
    <>
      {/* A drawing is worked by keys as one thing: arrows, letters, Enter. No element says that, and a fieldset is for a form. */}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions */}
      <div
        ref={host}
        className={now.stale ? `figure-host figure-${figure} stale` : `figure-host figure-${figure}`}
        style={{ height }}
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
        tabIndex={0}
        // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
        role="group"
        aria-label={label}
        onKeyDown={onKeyDown}
        onClick={onClick}
      >
        <div ref={paper} className="figure-paper" />
        {from && to && (
          <div key={ring.turn} className="figure-ring" style={{ left: from.x - 12, top: from.y - 12, width: to.x - from.x + 24, height: to.y - from.y + 24 }} />
        )}
        {live && (
          <output className={liveClass(live, view.getState().room.width)} style={{ left: live.x, top: live.y }}>
            {live.lines.map((line) => (
              <span key={line.text}>
                <b>{line.text}</b>
                {line.says && <i>{line.says}</i>}
              </span>
            ))}
          </output>
        )}
        {opened !== null && fieldAt && <InPlaceField key={opened} field={opened} figure={figure} now={now} at={fieldAt} onLeave={() => host.current?.focus({ preventScroll: true })} />}
        <div className="figure-spoken" aria-live="polite">
          {active === figure && chosen ? spoken(now.job, now.part, chosen, now.worked.resolved.values) : ''}
        </div>
      </div>
      {opened !== null && !fieldAt && <InPlaceField key={opened} field={opened} figure={figure} now={now} at={undefined} onLeave={() => host.current?.focus({ preventScroll: true })} />}
    </>
  );
}
