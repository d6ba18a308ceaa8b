/**
 * Paints a drawing into an element that nothing else writes to. What stands there is kept by key; the next painting makes,
 * takes away and moves only what differs, attribute by attribute. Texts go in as text nodes, never as markup.
 */
import { G, Path, Rect, SVG, Text, Tspan, type Element as SvgElement, type Svg } from '@svgdotjs/svg.js';
import type { Entity } from '../../drawing/entities';
import { classOf, markOf, type Look, type Mark, type Piece } from './marks';
import { sameShape } from './sameShape';

interface Standing {
  readonly element: SvgElement;
  /** What was painted last, and at which zoom. */
  entity: Entity;
  zoom: number;
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

function make(mark: Mark, entity: Entity, zoom: number): Standing {
  if (mark.tag === 'path') {
    const element = new Path();
    setAttrs(element, mark.attrs, {});
    return { element, entity, zoom, mark, pieces: [] };
  }
  const group = new G();
  setAttrs(group, mark.attrs, {});
  const pieces = mark.pieces.map(makePiece);
  for (const piece of pieces) group.add(piece);
  return { element: group, entity, zoom, mark, pieces };
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

/** Whether what stands there needs no painting: the same shape in the same look. */
const stands = (standing: Standing, entity: Entity, look: Look): boolean =>
  standing.zoom === look.zoom && sameShape(standing.entity, entity) && standing.mark.attrs['class'] === classOf(entity, look);

/** Keys of a drawing are unique; should two be alike, the later one still gets a place of its own. */
function uniqueKey(key: string, taken: ReadonlyMap<string, unknown>): string {
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
    let made = 0;
    let changed = 0;
    let due: Node | null = root.node.firstChild;
    for (const entity of entities) {
      const key = uniqueKey(entity.key, next);
      let standing = stage.get(key);
      if (!standing || !stands(standing, entity, look)) {
        const mark = markOf(entity, look);
        if (standing && !alike(standing.mark, mark)) {
          if (standing.element.node === due) due = due.nextSibling;
          standing.element.node.remove();
          stage.delete(key);
          standing = undefined;
        }
        if (!standing) {
          standing = make(mark, entity, look.zoom);
          made++;
        } else {
          if (patch(standing, mark)) changed++;
          standing.entity = entity;
          standing.zoom = look.zoom;
        }
      }
      const { node } = standing.element;
      if (node === due) due = due.nextSibling;
      else root.node.insertBefore(node, due);
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
