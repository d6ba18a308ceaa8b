/** The strip of checks: everything worth saying about a part that could be laid out. */
import { inside, lineToSegment } from '../geometry/meet';
import { line } from '../geometry/segments';
import { selfCrossings } from '../geometry/selfCrossings';
import { TOUCHING_MM } from '../geometry/tolerance';
import { fold } from '../part/fold';
import { mainRun } from '../part/mainRun';
import { bendCalled, figure, legCalled, legLetter } from '../part/names';
import { sectionOutline } from '../part/sectionOutline';
import type { Point } from '../geometry/types';
import type { Blank, Finding, Layout } from '../part/layoutTypes';
import { checkCutouts } from './checkCutouts';
import { LEAST_RADIUS_BY_THICKNESS, type Metal } from './metals';

/**
 * Faces are drawn in by this, mm, before a section is tested for running through itself: a hem closed flat, whose inner
 * faces lie on each other, is sound.
 */
const FACE_ON_FACE_MM = 0.001;

/** Legs whose plan holds a point of the blank or borders on it. */
function legsAt(blank: Blank, at: Point): number[] {
  const dot = line(at, at);
  return blank.plans.flatMap((plan, leg) => (inside(plan, at) || plan.some((s) => lineToSegment(dot, s) <= 2 * TOUCHING_MM) ? [leg] : []));
}

function outlineFinding(layout: Layout, blank: Blank): Finding {
  const crossing = selfCrossings(blank.outline, 1)[0];
  if (!crossing) return { level: 'good', key: 'outline', says: `The outline is one closed cut, ${figure(blank.cutLength, 0)} mm with its openings, and crosses nothing.` };
  const legs = legsAt(blank, crossing.at);
  const who = legs.length > 0 ? legs.map((leg) => `leg ${legLetter(leg)}`).join(' and ') : 'the outline';
  const where = `${figure(crossing.at.x)} mm from the datum edge and ${figure(crossing.at.y)} mm up`;
  return { level: 'stop', key: 'outline', place: { leg: legs.at(-1) ?? layout.part.legs.length - 1, what: 'leg' }, says: `The blank runs into itself at ${who}, ${where}. Make a leg shorter or narrower, or move it.` };
}

/** Whether the bent main run passes through itself. */
function sectionFindings(layout: Layout): Finding[] {
  const { path, owners } = sectionOutline(layout, fold(layout), Math.min(FACE_ON_FACE_MM, layout.part.thickness / 4));
  const crossing = selfCrossings(path, 1)[0];
  if (!crossing) return [];
  const [a, b] = [owners[crossing.first], owners[crossing.second]].toSorted((p, q) => (p?.leg ?? 0) - (q?.leg ?? 0));
  const called = (o: typeof a): string => (!o ? 'the part' : o.bend ? bendCalled(o.leg).toLowerCase() : `leg ${legLetter(o.leg)}`);
  const leg = b?.leg ?? 0;
  return [{ level: 'stop', key: 'section', place: { leg, what: b?.bend ? 'bend' : 'leg' }, says: `Once bent, ${called(b)} runs through ${called(a)}. Change a length, an angle or a way between them.` }];
}

/**
 * Straight metal that the tools can hold. A free leg: 4 t outside (guides that were read). A leg between two bends: 2 t
 * straight (common practice, no source).
 */
function gripFindings(layout: Layout): Finding[] {
  const { part, legs } = layout;
  if (part.legs.length < 2) return [];
  const t = part.thickness;
  const short: Finding[] = [];
  legs.forEach((leg, i) => {
    const bends = (leg.bend ? 1 : 0) + (leg.children.some((c) => part.legs[c]?.bend?.edge === 'end') ? 1 : 0);
    if (bends === 2 && leg.straight < 2 * t - TOUCHING_MM) {
      short.push({ level: 'care', key: `grip ${i}`, place: { leg: i, what: 'leg' }, says: `${legCalled(part, i)} keeps ${figure(leg.straight)} mm straight between its bends. Less than ${figure(2 * t)} mm is hard to grip.` });
    }
    const only = legs[leg.bend ? i : (leg.children[0] ?? -1)]?.bend;
    if (bends === 1 && only) {
      const outside = leg.straight + only.figures.outsideSetback;
      if (outside < 4 * t - TOUCHING_MM) {
        short.push({ level: 'care', key: `grip ${i}`, place: { leg: i, what: 'leg' }, says: `${legCalled(part, i)} stands ${figure(outside)} mm outside its bend. Less than ${figure(4 * t)} mm may slip in a vee die; bend it over a former in the vice.` });
      }
    }
  });
  if (short.length > 0) return short;
  const run = mainRun(layout);
  const least = run.reduce((best, i) => ((legs[i]?.straight ?? Infinity) < (legs[best]?.straight ?? Infinity) ? i : best), run[0] ?? 0);
  return [{ level: 'good', key: 'grip', place: { leg: least, what: 'leg' }, says: `Every leg keeps enough straight to grip. The shortest, ${legLetter(least)}, has ${figure(legs[least]?.straight ?? 0)} mm.` }];
}

function radiusFindings(layout: Layout, metal: Metal): Finding[] {
  const { part, legs } = layout;
  const factor = LEAST_RADIUS_BY_THICKNESS[metal];
  if (factor === undefined) return [];
  const least = factor * part.thickness;
  return legs.flatMap((leg, i): Finding[] => {
    const radius = leg.bend?.figures.radius ?? Infinity;
    if (radius >= least - TOUCHING_MM) return [];
    return [{ level: 'care', key: `radius ${i}`, place: { leg: i, what: 'bend' }, says: `${bendCalled(i)} has an inside radius of ${figure(radius)} mm. Under ${figure(least)} mm, ${factor} × the thickness, ${metal} may crack unless it is annealed.` }];
  });
}

/** Legs of different width on either side of a bend leave a shoulder at the tangent line. */
function shoulderFindings(layout: Layout): Finding[] {
  const { part } = layout;
  return part.legs.flatMap((leg, i): Finding[] => {
    const parent = leg.bend?.edge === 'end' ? part.legs[leg.bend.parent] : undefined;
    if (!parent) return [];
    const step = Math.abs(parent.endWidth - leg.startWidth) / 2;
    if (step <= TOUCHING_MM) return [];
    return [{ level: 'care', key: `shoulder ${i}`, place: { leg: i, what: 'bend' }, says: `At ${bendCalled(i).toLowerCase()} the width steps by ${figure(step)} mm a side, right at the bend. The shoulder may tear; file a small relief there.` }];
  });
}

const ORDER = { stop: 0, care: 1, good: 2 } as const;
/** Most findings listed; the rest are counted. A part of ten thousand holes must not bury its maker in sentences. */
const MOST_FINDINGS = 40;

/** @returns findings, worst first; at least one good one where nothing is wrong */
export function checkPart(layout: Layout, blank: Blank, metal: Metal): readonly Finding[] {
  const cutouts = checkCutouts(layout, blank);
  const findings: Finding[] = [
    // A cut that an opening breaks through is not one closed cut: then the openings' own sentences stand alone.
    ...[outlineFinding(layout, blank)].filter((f) => f.level === 'stop' || !cutouts.findings.some((c) => c.level === 'stop')),
    ...sectionFindings(layout),
    ...cutouts.findings,
    ...radiusFindings(layout, metal),
    ...shoulderFindings(layout),
    ...gripFindings(layout),
  ];
  if (blank.cutouts.length > 0 && blank.bends.length > 0 && cutouts.clearOfBends) {
    findings.push({ level: 'good', key: 'clear', says: 'Every hole keeps clear of the bends.' });
  }
  const sorted = findings.toSorted((a, b) => ORDER[a.level] - ORDER[b.level]);
  if (sorted.length <= MOST_FINDINGS) return sorted;
  const more = sorted.length - MOST_FINDINGS;
  const cut = sorted[MOST_FINDINGS];
  return [...sorted.slice(0, MOST_FINDINGS), { level: cut?.level ?? 'care', key: 'more', says: `${more} more like these are not listed.` }];
}
