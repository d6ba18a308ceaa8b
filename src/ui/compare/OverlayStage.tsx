import { useEffect, useLayoutEffect, useRef, type PointerEvent } from 'react';
import type { Drawing, TextEntity } from '../../drawing/entities';
import { textBox } from '../../drawing/textWidth';
import { makePainter, type Painter } from '../canvas/paintDrawing';
import { toScreen, type FigureName, type Sight } from '../canvas/view';
import { lettersOf, litBy, placeOf } from './overlays';

interface Props {
  readonly figure: FigureName;
  readonly label: string;
  readonly drawing: Drawing;
  readonly sight: Sight;
  /** px */
  readonly height: number;
  readonly lit: string | undefined;
  readonly onLetter: (letter: string | undefined) => void;
  /** px, while it is dragged. */
  readonly onPan: (dx: number, dy: number) => void;
  readonly onZoom: (factor: number, at: { readonly x: number; readonly y: number }) => void;
  /** Whether it was moved by hand: then a finger moves the drawing, not the page. */
  readonly byHand: boolean;
}

/** px: half of a 44 px target. */
const REACH_PX = 22;
/** px before a press is a drag (guide: 6, by finger 10). */
const DRAG_PX = { mouse: 6, touch: 10 };
const WHEEL_RATE = 0.0022;

/** The letter that a press means, if one is near. A second press on a mark of several letters goes on to its next one. */
function letterAt(drawing: Drawing, lit: string | undefined, p: { readonly x: number; readonly y: number }, px: number): string | undefined {
  let best: { readonly letters: readonly string[]; readonly off: number } | undefined;
  for (const entity of drawing.entities) {
    const letters = lettersOf(entity);
    if (letters.length === 0) continue;
    const box = textBox(entity as TextEntity, px);
    const off = Math.hypot(Math.max(0, Math.abs(p.x - box.x) - box.halfLength), Math.max(0, Math.abs(p.y - box.y) - box.halfHeight)) / px;
    if (off <= REACH_PX && (!best || off < best.off)) best = { letters, off };
  }
  if (!best) return undefined;
  const { letters } = best;
  return letters[(letters.indexOf(lit ?? '') + 1) % letters.length];
}

const noName = (entity: TextEntity): string => entity.text;

/** One overlay on show. What it says stands in the table as well, so it is read out as one picture. */
export function OverlayStage({ figure, label, drawing, sight, height, lit, onLetter, onPan, onZoom, byHand }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const paper = useRef<HTMLDivElement>(null);
  const painter = useRef<Painter | null>(null);
  const press = useRef<{ x: number; y: number; dragging: boolean } | null>(null);

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
    painter.current?.paint(drawing.entities, { zoom: sight.zoom, chosen: null, editing: null, nameOf: noName, alsoLit: litBy(drawing, lit) });
  }, [drawing, sight, figure, height, lit]);

  // A wheel turned with Ctrl, or a pinch on a touch pad, zooms; React's own wheel events cannot keep the page from zooming.
  useEffect(() => {
    const element = host.current;
    const onWheel = (event: WheelEvent): void => {
      if (!event.ctrlKey || !element) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const rate = Math.abs(event.deltaY) < 50 ? WHEEL_RATE * 4 : WHEEL_RATE;
      onZoom(Math.exp(-event.deltaY * rate), { x: event.clientX - box.left, y: event.clientY - box.top });
    };
    element?.addEventListener('wheel', onWheel, { passive: false });
    return () => element?.removeEventListener('wheel', onWheel);
  }, [onZoom]);

  const onDown = (event: PointerEvent<HTMLDivElement>): void => {
    if (event.button !== 0) return;
    press.current = { x: event.clientX, y: event.clientY, dragging: false };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const onMove = (event: PointerEvent<HTMLDivElement>): void => {
    const held = press.current;
    if (!held) return;
    const [dx, dy] = [event.clientX - held.x, event.clientY - held.y];
    if (!held.dragging && Math.hypot(dx, dy) < DRAG_PX[event.pointerType === 'touch' ? 'touch' : 'mouse']) return;
    press.current = { x: event.clientX, y: event.clientY, dragging: true };
    onPan(dx, dy);
  };
  const onUp = (event: PointerEvent<HTMLDivElement>): void => {
    const held = press.current;
    press.current = null;
    if (!held || held.dragging) return;
    const box = event.currentTarget.getBoundingClientRect();
    const p = { x: sight.left + (event.clientX - box.left) / sight.zoom, y: sight.mid[figure] + (height / 2 - (event.clientY - box.top)) / sight.zoom };
    onLetter(letterAt(drawing, lit, p, 1 / sight.zoom));
  };

  const place = placeOf(drawing, lit);
  const ring = place && toScreen(sight, figure, height, place);
  return (
    <div
      ref={host}
      className={`figure-host overlay-host figure-${figure}${byHand ? ' by-hand' : ''}`}
      style={{ height }}
      role="img"
      aria-label={label}
      onPointerDown={onDown}
      onPointerMove={onMove}
      onPointerUp={onUp}
      onPointerCancel={() => {
        press.current = null;
      }}
    >
      <div ref={paper} className="figure-paper" />
      {ring && <div className="overlay-ring" style={{ left: ring.x, top: ring.y }} />}
    </div>
  );
}
