/**
 * What is worked out from a part. `layOut` gives the layout (everything in the frame of its own leg); `unfold` and `fold`
 * are the same walk over it with different frames, plane poses for the blank and frames in space for the bent part.
 */
import type { BendFigures } from '../bending/types';
import type { Bounds, ClosedPath, Contour, Frame, Point, Pose, Vector3 } from '../geometry/types';
import type { CutoutShape, Part } from './types';

/** One opening, in the frame of its leg (mm, marked face). A row or a grid gives several with the same `cutout`. */
export interface LegCutout {
  /** Index of the cut-out in the leg's list, and which of its repeats this is, from 0. */
  readonly cutout: number;
  readonly item: number;
  readonly centre: Point;
  readonly shape: CutoutShape;
  readonly contour: Contour;
}

/** A bend in the frame of the parent leg. */
export interface LegBend {
  readonly figures: BendFigures;
  readonly way: 'up' | 'down';
  /** Middle of the start tangent line in the parent's frame; x of the pose points across the bend, away from the parent. */
  readonly seat: Pose;
  /** mm, length of the bend along its line: its bend zone lies from −width/2 to +width/2 about the seat. */
  readonly width: number;
}

export interface LegLayout {
  /** mm between the tangent lines (or free edges). */
  readonly straight: number;
  /** mm, setback at each end for the length's own basis; 0 at a free end. */
  readonly startSetback: number;
  readonly endSetback: number;
  /**
   * Flat metal of this leg alone: closed, anticlockwise, in the leg's frame, from x = 0 to x = straight, with end shapes
   * and with the bites that reliefs and side lugs take out of it.
   */
  readonly plan: ClosedPath;
  readonly cutouts: readonly LegCutout[];
  /** The bend that joins it to its parent; undefined on the first leg. */
  readonly bend: LegBend | undefined;
  /** Indices of the legs that hang on it. */
  readonly children: readonly number[];
}

export interface Layout {
  readonly part: Part;
  readonly legs: readonly LegLayout[];
}

/** A bend on the blank. Lines run from the right side to the left side of the bend (looking along the leg beyond it). */
export interface BlankBend {
  /** Index of the leg it leads to; this is also the bend's ringed number. */
  readonly leg: number;
  readonly figures: BendFigures;
  readonly way: 'up' | 'down';
  readonly startTangent: readonly [Point, Point];
  readonly centreLine: readonly [Point, Point];
  readonly endTangent: readonly [Point, Point];
  /** The bend zone: closed, anticlockwise. */
  readonly zone: ClosedPath;
}

export interface BlankCutout {
  readonly leg: number;
  readonly cutout: number;
  readonly item: number;
  readonly centre: Point;
  /** rad, direction of the leg's x axis on the blank. */
  readonly heading: number;
  readonly shape: CutoutShape;
  readonly contour: Contour;
}

/**
 * The flat blank, marked face up, mm. Origin at the lower left corner of the outline's bounds; x runs along the first leg,
 * so that the datum edge of a plain strip is x = 0.
 */
export interface Blank {
  /** One closed path, anticlockwise, lines and true arcs. */
  readonly outline: ClosedPath;
  /** Where each leg's frame stands on the blank. */
  readonly legs: readonly Pose[];
  /** Each leg's plan moved to the blank. */
  readonly plans: readonly ClosedPath[];
  readonly bends: readonly BlankBend[];
  readonly cutouts: readonly BlankCutout[];
  readonly bounds: Bounds;
  /** mm along the main run from the first leg's start to the end of the last leg joined end to end. */
  readonly developedLength: number;
  /** mm², outline less cut-outs. */
  readonly area: number;
  /** mm, outline and all cut-outs. */
  readonly cutLength: number;
  /** Outline and cut-outs, each begun once. */
  readonly pierces: number;
}

/** A bend in space, bent to `turn` (less than its full angle while the part is being bent). */
export interface FoldedBend {
  readonly leg: number;
  /** At the middle of the start tangent line on the marked face; x across the bend, z out of the marked face. */
  readonly frame: Frame;
  readonly turn: number;
  readonly way: 'up' | 'down';
  /** mm, inside radius at this stage: the neutral line keeps its length while the bend is made. Infinity while flat. */
  readonly radius: number;
  readonly width: number;
  /** mm along the neutral line. */
  readonly allowance: number;
}

export interface FoldedCutout {
  readonly leg: number;
  readonly cutout: number;
  readonly item: number;
  /** On the marked face, mm, in the frame of the first leg. */
  readonly centre: Vector3;
  /** Unit, out of the marked face. */
  readonly axis: Vector3;
}

/** The bent part in the frame of its first leg. */
export interface Folded {
  readonly legs: readonly Frame[];
  readonly bends: readonly FoldedBend[];
  readonly cutouts: readonly FoldedCutout[];
}

/** What a finding points at. `bend` goes by the leg it leads to. */
export interface Place {
  readonly leg: number;
  readonly what: 'leg' | 'bend' | 'cutout';
  readonly cutout?: number;
}

/** One sentence of the strip of checks. `stop`: the part cannot be made and is not exported. `care`: look at this. */
export interface Finding {
  readonly level: 'stop' | 'care' | 'good';
  readonly says: string;
  readonly place?: Place;
  /** Stays the same while the same thing is found, for lists on screen. */
  readonly key: string;
}
