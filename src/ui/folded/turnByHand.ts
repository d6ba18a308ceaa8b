/** Fingers, mouse and wheel on the folded view. Drag turns; two fingers or the other button slide; wheel and pinch zoom. */

export interface Hand {
  turn(dx: number, dy: number): void;
  slide(dx: number, dy: number): void;
  /** x, y: px in the element */
  zoom(factor: number, x: number, y: number): void;
  tap(x: number, y: number): void;
  doubleTap(): void;
}

/** A finger wanders more than a mouse before it means a drag, px. */
const DRAG_FROM_PX = { mouse: 6, other: 10 };
const DOUBLE_TAP_MS = 350;
const DOUBLE_TAP_PX = 24;
/** One notch of a usual wheel (100) brings the part nearer by a sixth. */
const WHEEL_PER_DOUBLING = 450;
const PX_PER_WHEEL_LINE = 33;

interface Held {
  readonly downX: number;
  readonly downY: number;
  x: number;
  y: number;
  readonly slides: boolean;
}

/** Listens on an element. @returns how to stop listening */
export function turnByHand(element: HTMLElement, hand: Hand): () => void {
  const held = new Map<number, Held>();
  let dragging = false;
  let lastTap: { readonly at: number; readonly x: number; readonly y: number } | undefined;

  const place = (event: { clientX: number; clientY: number }): { x: number; y: number } => {
    const box = element.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  const down = (event: PointerEvent): void => {
    if (held.size >= 2) return;
    element.setPointerCapture(event.pointerId);
    const at = place(event);
    if (held.size === 0) dragging = false;
    else dragging = true;
    held.set(event.pointerId, { downX: at.x, downY: at.y, ...at, slides: event.button > 0 || event.shiftKey });
  };

  const move = (event: PointerEvent): void => {
    const mine = held.get(event.pointerId);
    if (!mine) return;
    const at = place(event);
    const [dx, dy] = [at.x - mine.x, at.y - mine.y];
    const from = event.pointerType === 'mouse' ? DRAG_FROM_PX.mouse : DRAG_FROM_PX.other;
    if (!dragging && Math.hypot(at.x - mine.downX, at.y - mine.downY) < from) return;
    dragging = true;
    const other = [...held].find(([id]) => id !== event.pointerId)?.[1];
    if (other) {
      const before = Math.hypot(mine.x - other.x, mine.y - other.y);
      const after = Math.hypot(at.x - other.x, at.y - other.y);
      // Each finger carries its half of the slide.
      hand.slide(dx / 2, dy / 2);
      if (before > 1 && after > 1) hand.zoom(after / before, (at.x + other.x) / 2, (at.y + other.y) / 2);
    } else if (mine.slides) hand.slide(dx, dy);
    else hand.turn(dx, dy);
    Object.assign(mine, at);
  };

  const up = (event: PointerEvent): void => {
    const mine = held.get(event.pointerId);
    if (!mine) return;
    held.delete(event.pointerId);
    if (event.type !== 'pointerup' || dragging || mine.slides || held.size > 0) return;
    const { x, y } = place(event);
    const again = lastTap && event.timeStamp - lastTap.at < DOUBLE_TAP_MS && Math.hypot(x - lastTap.x, y - lastTap.y) < DOUBLE_TAP_PX;
    lastTap = again ? undefined : { at: event.timeStamp, x, y };
    if (again) hand.doubleTap();
    else hand.tap(x, y);
  };

  const wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const { x, y } = place(event);
    const px = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? event.deltaY * PX_PER_WHEEL_LINE : event.deltaY;
    hand.zoom(2 ** (-px / WHEEL_PER_DOUBLING), x, y);
  };

  const noMenu = (event: Event): void => event.preventDefault();

  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', up);
  element.addEventListener('pointercancel', up);
  element.addEventListener('wheel', wheel, { passive: false });
  element.addEventListener('contextmenu', noMenu);
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', up);
    element.removeEventListener('pointercancel', up);
    element.removeEventListener('wheel', wheel);
    element.removeEventListener('contextmenu', noMenu);
  };
}
