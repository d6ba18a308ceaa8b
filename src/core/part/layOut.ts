/** From a part to its layout: every leg in its own frame, with its bend, its plan and its cut-outs. */
import { bendFigures } from '../bending/bendFigures';
import { setback } from '../bending/setback';
import { placedPath } from '../geometry/pose';
import { SAME_LENGTH_MM } from '../geometry/tolerance';
import type { BendFigures } from '../bending/types';
import type { Segment } from '../geometry/types';
import type { ManyResult, Problem, Result } from '../result';
import { checkNumbers } from './checkNumbers';
import { cutoutPlaces } from './cutoutPlaces';
import { endOutline, type EndOutline } from './endShape';
import { longEdge, type LongEdge } from './longEdge';
import { lugSeat, lugsWithoutGap, type LugSeat } from './lugSeat';
import { bendCalled, figure, legCalled } from './names';
import { walkLeg, withoutNeedlessVertices, type WalkedLeg } from './outlineWalk';
import type { LegLayout, Layout } from './layoutTypes';
import type { Along, Basis, EndShape, Leg, Part } from './types';

/** A layout with what the walk round the outline needs besides. */
export interface WalkableLayout extends Layout {
  readonly walked: readonly WalkedLeg[];
}

const SQUARE: EndShape = { kind: 'square' };

/** The leg turned end for end, so that its start can be drawn as an end. */
const turnedRound = (edge: LongEdge, length: number): LongEdge => ({
  taper: -edge.taper,
  rise: edge.rise + length * Math.tan(edge.taper),
  start: { x: length - edge.end.x, y: edge.end.y },
  end: { x: length - edge.start.x, y: edge.start.y },
});

/** Setbacks at the two ends of a leg; a free end has none. */
interface Ends {
  readonly start: BendFigures | undefined;
  readonly end: BendFigures | undefined;
}

const endSetback = (figures: BendFigures | undefined, basis: Basis, thickness: number): number =>
  figures ? setback(basis, figures.turn, figures.radius, thickness) : 0;

/** x in the leg's frame of the place that `along` counts from, mm. */
function datum(along: Along, ends: Ends, straight: number, thickness: number): number {
  const start = -endSetback(ends.start, along.basis, thickness);
  const end = straight + endSetback(ends.end, along.basis, thickness);
  return { start, end, middle: (start + end) / 2 }[along.from];
}

/** The free end's outline, or the reason why there is none, told of the right end of the right leg. */
function shaped(edge: LongEdge, shape: EndShape, field: string, called: string, problems: Problem[]): EndOutline | undefined {
  const outline = endOutline(edge, shape);
  if (outline.ok) return outline.value;
  problems.push({ ...outline.problem, field: `${field}.${outline.problem.field}`, says: `${called} ${outline.problem.says}` });
  return undefined;
}

function shortLeg(part: Part, i: number, leg: Leg, ends: Ends, straight: number, before: number, behind: number): string {
  const short = figure(-straight);
  const bends = ends.start && ends.end ? 'two bends' : 'bend';
  const basis = before > 0 && behind > 0 && leg.startBasis !== leg.endBasis ? `${leg.startBasis} to ${leg.endBasis}` : behind > 0 && before === 0 ? leg.endBasis : leg.startBasis;
  return `${legCalled(part, i)} is too short for its ${bends} by ${short} mm. Make it more than ${figure(before + behind)} mm ${basis}, or use a smaller radius.`;
}

/**
 * Lays out every leg of a part.
 * @returns all problems at once, each with the path of its field in the part and a sentence that names the leg, bend or
 * hole and the amount; a leg at fault does not hide the faults of the others
 */
export function layOut(part: Part): ManyResult<WalkableLayout> {
  const problems: Problem[] = checkNumbers(part);
  if (problems.length > 0) return { ok: false, problems };
  const { legs, thickness } = part;

  const figures: (BendFigures | undefined)[] = legs.map((leg, i) => {
    if (!leg.bend) return undefined;
    const found = bendFigures(part.rule, leg.bend.turn, leg.bend.radius, thickness);
    if (found.ok) return found.value;
    const ofBend = ['turn', 'radius'].includes(found.problem.field);
    problems.push({ ...found.problem, field: ofBend ? `legs.${i}.bend.${found.problem.field}` : found.problem.field, says: `${bendCalled(i)}: ${found.problem.says}` });
    return undefined;
  });
  if (problems.length > 0) return { ok: false, problems };

  const children: number[][] = legs.map(() => []);
  const endChild: (number | undefined)[] = legs.map(() => undefined);
  legs.forEach((leg, i) => {
    if (!leg.bend) return;
    children[leg.bend.parent]?.push(i);
    if (leg.bend.edge === 'end') endChild[leg.bend.parent] = i;
  });

  const sized = legs.map((leg, i) => {
    const child = endChild[i];
    const ends: Ends = { start: figures[i], end: child === undefined ? undefined : figures[child] };
    const before = endSetback(ends.start, leg.startBasis, thickness);
    const behind = endSetback(ends.end, leg.endBasis, thickness);
    const left = leg.length - before - behind;
    // A leg of exactly its setbacks has no flat; what rounding leaves over must not refuse it.
    const straight = Math.abs(left) <= SAME_LENGTH_MM ? 0 : left;
    if (straight < 0) {
      problems.push({ field: `legs.${i}.length`, says: shortLeg(part, i, leg, ends, straight, before, behind), amount: -straight });
    }
    return { leg, ends, before, behind, straight, child };
  });
  if (problems.length > 0) return { ok: false, problems };
  if (sized.every(({ straight, ends }) => straight === 0 && (ends.start?.allowance ?? 0) <= SAME_LENGTH_MM)) {
    return { ok: false, problems: [{ field: 'legs.0.length', says: `${legCalled(part, 0)} and all others have no flat, and the bends take up nothing: there is no blank. Make a leg longer.` }] };
  }

  const edges: (Result<LongEdge> | undefined)[] = sized.map(({ leg, ends, straight }) =>
    longEdge(straight, leg.startWidth / 2, leg.endWidth / 2, ends.start ? 'square' : leg.startShape.kind, ends.end ? 'square' : leg.endShape.kind),
  );
  edges.forEach((edge, i) => {
    if (edge && !edge.ok) problems.push({ ...edge.problem, field: `legs.${i}.${edge.problem.field}`, says: `${legCalled(part, i)} ${edge.problem.says}` });
  });
  if (problems.length > 0) return { ok: false, problems };

  const walked: WalkedLeg[] = [];
  const laid: LegLayout[] = [];
  sized.forEach(({ leg, ends, before, behind, straight, child }, i) => {
    const found = edges[i];
    if (!found?.ok) return;
    const edge = found.value;
    const called = legCalled(part, i);
    const end = shaped(edge, ends.end ? SQUARE : leg.endShape, `legs.${i}.endShape`, called, problems);
    const start = shaped(turnedRound(edge, straight), ends.start ? SQUARE : leg.startShape, `legs.${i}.startShape`, called, problems);
    if (!end || !start) return;
    const edgeFrom = { x: straight - start.edgePoint.x, y: start.edgePoint.y };
    if (end.edgePoint.x < edgeFrom.x - SAME_LENGTH_MM) {
      problems.push({ field: `legs.${i}.length`, says: `${called} is ${figure(edgeFrom.x - end.edgePoint.x)} mm too short for the shapes of its two ends. Make it longer, or the corners smaller.`, amount: edgeFrom.x - end.edgePoint.x });
      return;
    }

    const free = !ends.start && !ends.end && edgeFrom.x === 0 && end.edgePoint.x === straight;
    const squareEnds = free && Math.abs(leg.endWidth - leg.startWidth) <= SAME_LENGTH_MM;
    const lugs: LugSeat[] = [];
    for (const lug of children[i] ?? []) {
      const bend = legs[lug]?.bend;
      const lugFigures = figures[lug];
      if (!bend?.seat || !lugFigures || bend.edge === 'end') continue;
      const straightEdge: LongEdge = { ...edge, start: edgeFrom, end: end.edgePoint };
      const at = datum(bend.seat.along, ends, straight, thickness);
      const x = bend.seat.along.from === 'end' ? at - bend.seat.along.distance : at + bend.seat.along.distance;
      const seat = lugSeat(lug, { ...bend, seat: bend.seat }, lugFigures, thickness, legs[lug]?.startWidth ?? 0, straightEdge, x, squareEnds, straight);
      if (seat.ok) lugs.push(seat.value);
      else problems.push({ ...seat.problem, field: `legs.${lug}.${seat.problem.field}`, says: `${legCalled(part, lug)} ${seat.problem.says}` });
    }
    for (const { lug, beside } of lugsWithoutGap(lugs)) {
      problems.push({ field: `legs.${lug}.bend.seat.along.distance`, says: `${legCalled(part, lug)} leaves no gap to ${legCalled(part, beside)} on the same edge, so nothing would part them. Move it, or make it narrower.` });
    }

    const next = child === undefined ? undefined : legs[child];
    const parent = leg.bend ? legs[leg.bend.parent] : undefined;
    const startBend = !leg.bend || !parent ? 0 : leg.bend.edge === 'end' ? Math.min(parent.endWidth, leg.startWidth) : leg.startWidth;
    const halfTurn = { x: straight, y: 0, heading: Math.PI };
    const walk: WalkedLeg = {
      straight,
      edge: { ...edge, start: edgeFrom, end: end.edgePoint },
      edgeFrom,
      edgeTo: end.edgePoint,
      startOutline: ends.start ? undefined : placedPath(start.segments, halfTurn),
      endOutline: ends.end ? undefined : end.segments,
      startBend,
      endBend: next ? Math.min(leg.endWidth, next.startWidth) : 0,
      endChild: child,
      lugs,
    };
    walked.push(walk);
    laid.push({
      straight,
      startSetback: before,
      endSetback: behind,
      plan: planOf(walk),
      cutouts: leg.cutouts.flatMap((cutout, j) => cutoutPlaces(cutout, j, datum(cutout.along, ends, straight, thickness), edge)),
      bend: undefined,
      children: children[i] ?? [],
    });
  });
  if (problems.length > 0) return { ok: false, problems };

  const withBends = laid.map((leg, i): LegLayout => {
    const { bend } = legs[i] ?? {};
    const own = figures[i];
    const parent = bend ? walked[bend.parent] : undefined;
    if (!bend || !own || !parent) return leg;
    const seat = bend.edge === 'end' ? { x: parent.straight, y: 0, heading: 0 } : parent.lugs.find((lug) => lug.child === i)?.pose;
    return seat ? { ...leg, bend: { figures: own, way: bend.way, seat, width: walked[i]?.startBend ?? 0 } } : leg;
  });
  return { ok: true, value: { part, legs: withBends, walked } };
}

/** The leg's own metal: the walk that crosses straight over every tangent line, closed at the start line. */
function planOf(walk: WalkedLeg): readonly Segment[] {
  const round = walkLeg({ ...walk, startBend: walk.startOutline ? 0 : walk.startBend }, () => []);
  const first = round[0];
  const last = round.at(-1);
  if (!first || !last) return [];
  const gap = Math.hypot(first.from.x - last.to.x, first.from.y - last.to.y);
  const closed = gap > SAME_LENGTH_MM ? [...round, { kind: 'line' as const, from: last.to, to: first.from }] : round;
  const plan = withoutNeedlessVertices(closed);
  // A leg without flat keeps its tangent line, out and back, so that every plan has bounds.
  return plan.length > 0 ? plan : closed;
}
