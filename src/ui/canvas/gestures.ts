/** Pointer and wheel on a figure: tap, drag, pan, pinch. One place keeps the state of the gesture; React is told what to show. */
import type { Point } from '../../core/geometry/types';
import { writeField } from '../../job/fields';
import { apply, bench, choose, dropMark, edit, endMark } from '../../store/bench';
import { fieldName } from '../fields/fieldName';
import { showValue } from '../fields/fieldReading';
import { dragPlan, dragTo, type DragPlan, type Moved, type Snapping } from './dragging';
import { dragStep } from './dragStep';
import type { FiguresNow } from './figures';
import { pickAt, type Picked } from './pickAt';
import { kept, panned, toDrawing, view, zoomedAbout, type FigureName, type Sight } from './view';

/** The figure that goes along with the pointer during a drag. */
export interface Live {
  readonly x: number;
  readonly y: number;
  /** Shown higher up by touch, so that the finger does not lie on it. */
  readonly touch: boolean;
  readonly lines: readonly { readonly text: string; readonly says: string | undefined }[];
}

export interface GestureContext {
  readonly figure: FigureName;
  readonly now: () => FiguresNow | undefined;
  readonly live: (live: Live | null) => void;
}

/** px to move before a drag begins, so that a tap never moves a thing (guide, "Keys, drag, snap, undo"). */
const MOUSE_SLACK = 6;
const TOUCH_SLACK = 10;
/** Zoom by one notch of a wheel (100 px of scrolling) and by one px. */
const WHEEL_RATE = 0.0022;

type Mode =
  | { readonly kind: 'idle' }
  | { readonly kind: 'pressed'; readonly id: number; readonly start: Point; readonly touch: boolean; readonly picked: Picked | undefined }
  | { readonly kind: 'pan'; readonly id: number; last: Point }
  | { readonly kind: 'pinch'; last: readonly [Point, Point] }
  | { readonly kind: 'drag'; readonly id: number; readonly start: Point; readonly touch: boolean; readonly plan: DragPlan; readonly mark: string; readonly fitted: boolean; readonly zoom: number };

let drags = 0;

export function attachGestures(host: HTMLElement, context: GestureContext): () => void {
  const { figure } = context;
  const down = new Map<number, Point>();
  let mode: Mode = { kind: 'idle' };

  const at = (event: { readonly clientX: number; readonly clientY: number }): Point => {
    const box = host.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const sighted = (next: (sight: Sight) => Sight): void => {
    const now = context.now();
    if (!now) return;
    view.setState({ hand: kept(next(now.sight), now.drawings, host.clientWidth, now.height) });
  };
  const onPaper = (now: FiguresNow, p: Point): Point => toDrawing(now.sight, figure, now.height[figure], p);
  const pickedAt = (p: Point): Picked | undefined => {
    const now = context.now();
    return now && pickAt(now.drawings[figure].entities, onPaper(now, p), 1 / now.sight.zoom);
  };
  const planAt = (picked: Picked | undefined, p: Point): DragPlan | undefined => {
    const now = context.now();
    // A figure is for typing; what it belongs to is dragged by the thing itself.
    if (!now || now.stale || !picked?.pick || picked.field !== undefined) return undefined;
    const source = { figure, job: now.job, part: now.part.id, shape: now.shape, values: now.worked.resolved.values };
    return dragPlan(source, picked.pick, onPaper(now, p), now.sight.zoom);
  };

  const write = (plan: DragPlan, moved: readonly Moved[], mark: string): void => {
    const job = bench.getState().job;
    const first = moved.find((m) => m.text !== m.axis.text) ?? moved[0];
    if (!first) return;
    const called = fieldName(job, first.axis.field)?.label ?? 'figure';
    apply((held) => moved.reduce((to, m) => writeField(to, m.axis.field, m.text), held), {
      label: `${called.charAt(0).toLowerCase()}${called.slice(1)} ${first.axis.text} to ${first.text}`,
      mark,
      chosen: plan.pick,
    });
  };

  const begin = (id: number, start: Point, touch: boolean, plan: DragPlan): void => {
    const now = context.now();
    if (!now) return;
    const fitted = view.getState().hand === null;
    // The picture is held still while a thing is moved on it.
    if (fitted) view.setState({ hand: { zoom: now.sight.zoom, left: now.sight.left, mid: now.sight.mid } });
    drags++;
    mode = { kind: 'drag', id, start, touch, plan, mark: `drag ${drags}`, fitted, zoom: now.sight.zoom };
    choose(plan.pick);
    edit(null);
    addEventListener('keydown', onKey, true);
  };

  const follow = (drag: Mode & { readonly kind: 'drag' }, p: Point, free: boolean): void => {
    const { job, part } = bench.getState();
    const snapping: Snapping = { ...dragStep(job, part), zoom: drag.zoom, free };
    const moved = dragTo(drag.plan, (p.x - drag.start.x) / drag.zoom, (drag.start.y - p.y) / drag.zoom, snapping);
    write(drag.plan, moved, drag.mark);
    const many = moved.length > 1;
    const lines = moved.flatMap((m) => {
      const still = m.text === m.axis.text;
      if (many && still && moved.some((other) => other.text !== other.axis.text)) return [];
      const after = many ? m.axis.word : (fieldName(job, m.axis.field)?.after ?? '');
      return [{ text: [showValue(job.units, 'length', m.value), after].filter(Boolean).join(' '), says: m.says }];
    });
    context.live({ x: p.x, y: p.y, touch: drag.touch, lines: many && moved.every((m) => m.text === m.axis.text) ? lines.slice(0, 1) : lines });
  };

  const finish = (drag: Mode & { readonly kind: 'drag' }, how: 'kept' | 'back'): void => {
    removeEventListener('keydown', onKey, true);
    const changed = bench.getState().mark === drag.mark;
    if (how === 'back') dropMark(drag.mark);
    else if (changed) endMark();
    if (drag.fitted) view.setState({ hand: null });
    context.live(null);
    mode = { kind: 'idle' };
    // A drag ends in the field, ready to correct.
    const main = drag.plan.axes[0];
    if (how === 'kept' && changed && main) edit(main.field);
  };

  function onKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || mode.kind !== 'drag') return;
    event.preventDefault();
    event.stopPropagation();
    finish(mode, 'back');
  }

  const tap = (picked: Picked | undefined): void => {
    if (picked?.pick) choose(picked.pick);
    else if (!picked) choose(null);
    edit(picked?.field ?? null);
  };

  const typing = (event: Event): boolean => event.target instanceof Element && event.target.closest('.in-place') !== null;

  const onDown = (event: PointerEvent): void => {
    if (typing(event) || (event.pointerType === 'mouse' && event.button !== 0 && event.button !== 1)) return;
    const p = at(event);
    host.focus({ preventScroll: true });
    down.set(event.pointerId, p);
    host.setPointerCapture(event.pointerId);
    view.setState({ active: figure });
    if (down.size === 2) {
      if (mode.kind === 'drag') finish(mode, 'back');
      const [a, b] = [...down.values()];
      if (a && b) mode = { kind: 'pinch', last: [a, b] };
      return;
    }
    if (down.size > 2) return;
    const touch = event.pointerType === 'touch';
    mode = event.button === 1 ? { kind: 'pan', id: event.pointerId, last: p } : { kind: 'pressed', id: event.pointerId, start: p, touch, picked: pickedAt(p) };
  };

  const onMove = (event: PointerEvent): void => {
    const p = at(event);
    if (!down.has(event.pointerId)) {
      hover(event, p);
      return;
    }
    down.set(event.pointerId, p);
    if (mode.kind === 'pressed' && mode.id === event.pointerId) {
      if (Math.hypot(p.x - mode.start.x, p.y - mode.start.y) < (mode.touch ? TOUCH_SLACK : MOUSE_SLACK)) return;
      const { id, start, touch } = mode;
      const plan = planAt(mode.picked, start);
      if (plan) begin(id, start, touch, plan);
      else mode = { kind: 'pan', id, last: start };
    }
    if (mode.kind === 'drag' && mode.id === event.pointerId) follow(mode, p, event.altKey);
    else if (mode.kind === 'pan' && mode.id === event.pointerId) {
      const { last } = mode;
      mode.last = p;
      sighted((sight) => panned(sight, figure, p.x - last.x, p.y - last.y));
    } else if (mode.kind === 'pinch') pinch(mode);
  };

  const pinch = (held: Mode & { readonly kind: 'pinch' }): void => {
    const [a, b] = [...down.values()];
    if (!a || !b) return;
    const [c, d] = held.last;
    held.last = [a, b];
    const spread = Math.hypot(c.x - d.x, c.y - d.y);
    const factor = spread > 1 ? Math.hypot(a.x - b.x, a.y - b.y) / spread : 1;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const before = { x: (c.x + d.x) / 2, y: (c.y + d.y) / 2 };
    const now = context.now();
    if (!now) return;
    sighted((sight) => zoomedAbout(panned(sight, figure, middle.x - before.x, middle.y - before.y), figure, now.height[figure], middle, factor));
  };

  /** The pointer says what would happen: type, drag or take hold. */
  const hover = (event: PointerEvent, p: Point): void => {
    if (event.pointerType === 'touch') return;
    const picked = pickedAt(p);
    const plan = planAt(picked, p);
    const axis = plan?.axes[0];
    const sideways = axis && Math.abs(axis.ux) >= Math.abs(axis.uy);
    host.dataset['hand'] = picked?.field !== undefined ? 'type' : axis ? ((plan?.axes.length ?? 0) > 1 ? 'move' : sideways ? 'sideways' : 'upright') : picked ? 'take' : 'paper';
  };

  const onUp = (event: PointerEvent): void => {
    if (!down.delete(event.pointerId)) return;
    if (mode.kind === 'pressed' && mode.id === event.pointerId) {
      const { picked } = mode;
      mode = { kind: 'idle' };
      tap(picked);
    } else if (mode.kind === 'drag' && mode.id === event.pointerId) finish(mode, 'kept');
    else if (mode.kind === 'pinch') {
      const left = [...down.entries()][0];
      mode = left ? { kind: 'pan', id: left[0], last: left[1] } : { kind: 'idle' };
    } else if (down.size === 0) mode = { kind: 'idle' };
  };

  const onCancel = (event: PointerEvent): void => {
    down.delete(event.pointerId);
    if (mode.kind === 'drag' && mode.id === event.pointerId) finish(mode, 'back');
    else if (down.size === 0) mode = { kind: 'idle' };
  };

  const onWheel = (event: WheelEvent): void => {
    const page = document.scrollingElement;
    const scrolls = page !== null && page.scrollHeight > page.clientHeight + 1;
    // Where the page itself scrolls, the wheel zooms only in a figure that is in use, or with Ctrl.
    if (!event.ctrlKey && scrolls && !host.contains(document.activeElement)) return;
    event.preventDefault();
    const lines = event.deltaMode === 1 ? 33 : 1;
    // A pinch on a touch pad comes as small wheel steps with Ctrl.
    const rate = event.ctrlKey && Math.abs(event.deltaY) < 50 ? WHEEL_RATE * 4 : WHEEL_RATE;
    const p = at(event);
    const now = context.now();
    if (now) sighted((sight) => zoomedAbout(sight, figure, now.height[figure], p, Math.exp(-event.deltaY * lines * rate)));
  };

  /** The focus is given above. The browser would give it to the figure under the finger after a tap, and take it from the field. */
  const onMouseDown = (event: MouseEvent): void => {
    if (!typing(event)) event.preventDefault();
  };

  /** A finger on a thing that can be dragged, or on a picture moved by hand, must not scroll the page. */
  const onTouch = (event: TouchEvent): void => {
    const touch = event.touches[0];
    if (!touch || typing(event)) return;
    const p = at(touch);
    if (event.touches.length > 1 || view.getState().hand !== null || planAt(pickedAt(p), p)) event.preventDefault();
  };

  host.addEventListener('pointerdown', onDown);
  host.addEventListener('mousedown', onMouseDown);
  host.addEventListener('pointermove', onMove);
  host.addEventListener('pointerup', onUp);
  host.addEventListener('pointercancel', onCancel);
  host.addEventListener('wheel', onWheel, { passive: false });
  host.addEventListener('touchstart', onTouch, { passive: false });
  return () => {
    if (mode.kind === 'drag') finish(mode, 'back');
    host.removeEventListener('pointerdown', onDown);
    host.removeEventListener('mousedown', onMouseDown);
    host.removeEventListener('pointermove', onMove);
    host.removeEventListener('pointerup', onUp);
    host.removeEventListener('pointercancel', onCancel);
    host.removeEventListener('wheel', onWheel);
    host.removeEventListener('touchstart', onTouch);
  };
}
