/**
 * A drawing: a list of entities on named layers, in mm, y upwards, that knows no output format. The screen, the DXF, the
 * paper and the measurements all read the same list, so they cannot disagree.
 */
import type { Bounds, Contour, Point, Segment } from '../core/geometry/types';

/** What an entity is; each sink decides how that looks (line weight, dash, colour, DXF layer). */
export type Role =
  | 'outline' | 'hole' | 'nick'
  | 'bend zone' | 'tangent line' | 'bend centre line'
  | 'centre line' | 'hatch' | 'hole edge'
  | 'dimension line' | 'extension line' | 'leader' | 'arrow'
  | 'leg area' | 'datum' | 'balloon'
  | 'dimension text' | 'basis text' | 'running text' | 'running total' | 'tangent text' | 'bend text' | 'note text'
  | 'leg letter' | 'bend number'
  // On paper only: edges to work to, punch marks, what makes the sheet true and what joins sheets.
  | 'template edge' | 'centre cross' | 'centre punch' | 'check bar' | 'register mark' | 'tile edge' | 'key plan' | 'key plan here'
  | 'part name' | 'tile name'
  // On shop sheets and comparisons: ruled lines, the part half bent, other stocks over the first, and lettering by weight.
  | 'sheet border' | 'sheet rule' | 'sheet hair' | 'sketch' | 'warning sign'
  | 'ghost 1' | 'ghost 2' | 'ghost 3' | 'ghost 4'
  | 'sheet title' | 'sheet heading' | 'sheet text' | 'sheet figure' | 'sheet caption' | 'sheet warning' | 'difference letter';

/** What a tap on the entity takes hold of, and what lights it up. Ids are those of the part. A bend goes by the leg it leads to. */
export type Pick =
  | { readonly kind: 'leg'; readonly leg: string }
  | { readonly kind: 'bend'; readonly leg: string }
  | { readonly kind: 'cutout'; readonly leg: string; readonly cutout: string };

interface Common {
  /** Stays the same from one drawing of a part to the next, so that a sink can patch what is on show. */
  readonly key: string;
  readonly role: Role;
  readonly pick?: Pick;
  /** The job field that the figure shows (see `src/job/fields.ts`); a tap edits it. */
  readonly field?: string;
}

/** Open or closed run of lines and true arcs, or several of them drawn as one. */
export interface PathEntity extends Common {
  readonly kind: 'path';
  readonly runs: readonly { readonly segments: readonly Segment[]; readonly closed: boolean }[];
}

/** Circles and closed paths drawn as one: the openings of one cut-out. */
export interface ContoursEntity extends Common {
  readonly kind: 'contours';
  readonly contours: readonly Contour[];
}

export interface TextEntity extends Common {
  readonly kind: 'text';
  readonly at: Point;
  readonly text: string;
  readonly align: 'start' | 'middle' | 'end';
  /** rad, anticlockwise, about `at`. `at` lies on the base line. */
  readonly rotation: number;
  /** A smaller word after the figure, such as the basis. */
  readonly suffix?: string;
}

export type Entity = PathEntity | ContoursEntity | TextEntity;

export interface Drawing {
  readonly entities: readonly Entity[];
  /** What the part itself covers, without dimensions. */
  readonly extent: Bounds;
  /** What all entities cover. */
  readonly bounds: Bounds;
}

/**
 * How large lettering and offsets are, in drawing mm: the layout of dimensions depends on it. On the screen a px is
 * 1 / zoom mm; on paper it is fixed.
 */
export interface Lettering {
  /** mm of the drawing for one reference px (guide: figure 18 px, caption 15 px, arrow 11 px). */
  readonly px: number;
  /** Leaves out where holes stand: for paper that has a table of them. */
  readonly withoutHoles?: boolean;
}
