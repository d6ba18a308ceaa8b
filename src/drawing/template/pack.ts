/**
 * Rectangles on sheets: shelves filled from the left, each as high as its first rectangle, the longest first. Every rectangle may
 * come in several shapes (a part upright or lying). Simple, and near enough for a handful of fittings.
 */
export interface Shape {
  readonly width: number;
  readonly height: number;
}

export interface Packed {
  readonly item: number;
  /** Which of the item's shapes. */
  readonly shape: number;
  readonly sheet: number;
  /** Lower left corner from the upper left corner of the sheet's room, y upwards. */
  readonly x: number;
  readonly y: number;
}

interface Shelf {
  readonly sheet: number;
  readonly top: number;
  readonly height: number;
  used: number;
}

/** Rounding must not refuse what fits exactly. */
const SLACK_MM = 1e-9;

function inOrder(items: readonly (readonly Shape[])[], room: Shape, gap: number, order: readonly number[], prefer: (shapes: readonly Shape[]) => readonly number[]): readonly Packed[] | undefined {
  const shelves: Shelf[] = [];
  const tops: number[] = [];
  const packed: Packed[] = [];
  const put = (item: number, shape: number, own: Shape, shelf: Shelf): void => {
    packed.push({ item, shape, sheet: shelf.sheet, x: shelf.used, y: -shelf.top - own.height });
    shelf.used += own.width + gap;
  };
  for (const item of order) {
    const shapes = items[item] ?? [];
    const fitting = prefer(shapes).filter((i) => (shapes[i]?.width ?? Infinity) <= room.width + SLACK_MM && (shapes[i]?.height ?? Infinity) <= room.height + SLACK_MM);
    let done = false;
    for (const shelf of shelves) {
      const shape = fitting.find((i) => shelf.used + (shapes[i]?.width ?? Infinity) <= room.width + SLACK_MM && (shapes[i]?.height ?? Infinity) <= shelf.height + SLACK_MM);
      const own = shape === undefined ? undefined : shapes[shape];
      if (shape === undefined || !own) continue;
      put(item, shape, own, shelf);
      done = true;
      break;
    }
    if (done) continue;
    const [shape] = fitting;
    const own = shape === undefined ? undefined : shapes[shape];
    if (shape === undefined || !own) return undefined;
    let sheet = tops.findIndex((top) => top + own.height <= room.height + SLACK_MM);
    if (sheet < 0) sheet = tops.push(0) - 1;
    const shelf: Shelf = { sheet, top: tops[sheet] ?? 0, height: own.height, used: 0 };
    tops[sheet] = shelf.top + own.height + gap;
    shelves.push(shelf);
    put(item, shape, own, shelf);
  }
  return packed;
}

/**
 * Packs the items on as few sheets as three ways of turning them find: all lying, all upright, all as given.
 * @param items the shapes that each may take, mm; every item must fit the room in one of them
 * @returns undefined where one does not
 */
export function pack(items: readonly (readonly Shape[])[], room: Shape, gap: number): readonly Packed[] | undefined {
  const longest = (i: number): number => Math.max(...(items[i] ?? []).map((s) => Math.max(s.width, s.height)));
  const order = items.map((_, i) => i).toSorted((a, b) => longest(b) - longest(a) || a - b);
  const by = (key: (s: Shape) => number) => (shapes: readonly Shape[]): readonly number[] => shapes.map((_, i) => i).toSorted((a, b) => key(shapes[a] as Shape) - key(shapes[b] as Shape));
  const tries = [by((s) => s.height), by((s) => s.width), by(() => 0)].map((prefer) => inOrder(items, room, gap, order, prefer));
  const sheets = (packed: readonly Packed[]): number => packed.reduce((most, p) => Math.max(most, p.sheet + 1), 0);
  return tries.reduce((best, next) => (!best ? next : next && sheets(next) < sheets(best) ? next : best), undefined);
}
