/**
 * Paints a drawing into an element that nothing else writes to. What stands there is kept by key; the next painting makes,
 * takes away and moves only what differs, attribute by attribute. Texts go in as text nodes, never as markup.
 */
import { G, Path, Rect, SVG, Text, Tspan, type Element as SvgElement, type Svg } from '@svgdotjs/svg.js';
import type { Entity } from '../../drawing/entities';
import { markOf, type Look, type Mark, type Piece } from './marks';

interface Standing {
  readonly element: SvgElement;
  mark: Mark;
  pieces: SvgElement[];
}

/** What one painting did. */
export interface Painted {
  readonly made: number;
  readonly changed: number;
  readonly removed: number;
}

export interface Painter {
  readonly paint: (entities: readonly Entity[], look: Look) => Painted;
  /** Where the drawing's origin stands, px from the top left of the host. */
  readonly move: (x: number, y: number) => void;
  readonly clear: () => void;
}

function setAttrs(element: SvgElement, next: Readonly<Record<string, string>>, before: Readonly<Record<string, string>>): boolean {
  let touched = false;
  for (const name in next) {
    const value = next[name];
    if (value === undefined || before[name] === value) continue;
    element.node.setAttribute(name, value);
    touched = true;
  }
  for (const name in before) {
    if (name in next) continue;
    element.node.removeAttribute(name);
    touched = true;
  }
  return touched;
}

function write(text: Text, piece: Piece): void {
  text.plain(piece.text ?? '');
  if (piece.suffix !== undefined && piece.suffix !== '') text.add(new Tspan().plain(piece.suffix).addClass('suffix').attr('dx', 5));
}

function makePiece(piece: Piece): SvgElement {
  const element = piece.tag === 'path' ? new Path() : piece.tag === 'rect' ? new Rect() : new Text();
  setAttrs(element, piece.attrs, {});
  if (element instanceof Text) write(element, piece);
  return element;
}

function make(mark: Mark): Standing {
  if (mark.tag === 'path') {
    const element = new Path();
    setAttrs(element, mark.attrs, {});
    return { element, mark, pieces: [] };
  }
  const group = new G();
  setAttrs(group, mark.attrs, {});
  const pieces = mark.pieces.map(makePiece);
  for (const piece of pieces) group.add(piece);
  return { element: group, mark, pieces };
}

/** Whether one mark can be changed into the other: same tag and the same pieces. */
const alike = (a: Mark, b: Mark): boolean => a.tag === b.tag && a.pieces.length === b.pieces.length && a.pieces.every((piece, i) => piece.tag === b.pieces[i]?.tag);

function patch(standing: Standing, next: Mark): boolean {
  let touched = setAttrs(standing.element, next.attrs, standing.mark.attrs);
  next.pieces.forEach((piece, i) => {
    const before = standing.mark.pieces[i];
    const element = standing.pieces[i];
    if (!before || !element) return;
    if (setAttrs(element, piece.attrs, before.attrs)) touched = true;
    if (element instanceof Text && (piece.text !== before.text || piece.suffix !== before.suffix)) {
      write(element, piece);
      touched = true;
    }
  });
  standing.mark = next;
  return touched;
}

/** Keys of a drawing are unique; should two be alike, the later one still gets a place of its own. */
function uniqueKey(key: string, taken: ReadonlySet<string>): string {
  if (!taken.has(key)) return key;
  let n = 2;
  while (taken.has(`${key} ${n}`)) n++;
  return `${key} ${n}`;
}

export function makePainter(host: HTMLElement): Painter {
  const svg: Svg = SVG().addTo(host);
  svg.attr({ focusable: 'false', width: '100%', height: '100%' });
  const root = svg.group();
  let stage = new Map<string, Standing>();
  let origin = '';

  const paint = (entities: readonly Entity[], look: Look): Painted => {
    const next = new Map<string, Standing>();
    const taken = new Set<string>();
    let made = 0;
    let changed = 0;
    let before: Node | null = null;
    for (const entity of entities) {
      const key = uniqueKey(entity.key, taken);
      taken.add(key);
      const mark = markOf(entity, look);
      let standing = stage.get(key);
      if (standing && !alike(standing.mark, mark)) {
        standing.element.node.remove();
        stage.delete(key);
        standing = undefined;
      }
      if (!standing) {
        standing = make(mark);
        made++;
      } else if (patch(standing, mark)) changed++;
      const { node } = standing.element;
      const due: Node | null = before ? before.nextSibling : root.node.firstChild;
      if (node !== due) root.node.insertBefore(node, due);
      before = node;
      next.set(key, standing);
    }
    let removed = 0;
    for (const [key, standing] of stage) {
      if (next.has(key)) continue;
      standing.element.node.remove();
      removed++;
    }
    stage = next;
    return { made, changed, removed };
  };

  return {
    paint,
    move: (x, y) => {
      const to = `translate(${Math.round(x * 100) / 100} ${Math.round(y * 100) / 100})`;
      if (to === origin) return;
      origin = to;
      root.node.setAttribute('transform', to);
    },
    clear: () => {
      svg.node.remove();
      stage = new Map();
    },
  };
}
