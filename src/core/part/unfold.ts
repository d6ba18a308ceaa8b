/** The blank: the layout walked in the plane, each bend laid flat at the length of its allowance. */
import { contourArea, signedArea } from '../geometry/area';
import { pathBounds } from '../geometry/bounds';
import { compose, placedContour, placedPath, placer } from '../geometry/pose';
import { contourLength, line, pathLength } from '../geometry/segments';
import type { Point, Pose, Segment } from '../geometry/types';
import type { WalkableLayout } from './layOut';
import { throughBend, walkLeg, withoutNeedlessVertices, type Beyond } from './outlineWalk';
import type { Blank, BlankBend, BlankCutout, LegBend } from './layoutTypes';

/** Where a child leg's frame lies in its parent's frame on the blank. */
const flatStep = (bend: LegBend): Pose => compose(bend.seat, { x: bend.figures.allowance, y: 0, heading: 0 });

/** Poses of all legs on the blank, first leg at the origin. */
function flatPoses(layout: WalkableLayout): Pose[] {
  const poses: Pose[] = [];
  layout.legs.forEach((leg, i) => {
    const parent = layout.part.legs[i]?.bend?.parent;
    const under = parent === undefined ? undefined : poses[parent];
    poses.push(leg.bend && under ? compose(under, flatStep(leg.bend)) : { x: 0, y: 0, heading: 0 });
  });
  return poses;
}

/** The outline in the frame of the first leg. */
function outline(layout: WalkableLayout): readonly Segment[] {
  const beyond: Beyond = (child, from, to) => {
    const walk = layout.walked[child];
    const bend = layout.legs[child]?.bend;
    return walk && bend ? throughBend(walkLeg(walk, beyond), flatStep(bend), from, to) : [];
  };
  const root = layout.walked[0];
  return root ? withoutNeedlessVertices(walkLeg(root, beyond)) : [];
}

function blankBend(bend: LegBend, leg: number, parent: Pose): BlankBend {
  const half = bend.width / 2;
  const { allowance } = bend.figures;
  const put = placer(compose(parent, bend.seat));
  const across = (x: number): readonly [Point, Point] => [put({ x, y: -half }), put({ x, y: half })];
  const startTangent = across(0);
  const endTangent = across(allowance);
  const [a, d] = startTangent;
  const [b, c] = endTangent;
  return {
    leg,
    figures: bend.figures,
    way: bend.way,
    startTangent,
    centreLine: across(allowance / 2),
    endTangent,
    zone: [line(a, b), line(b, c), line(c, d), line(d, a)],
  };
}

/** mm along the main run: straights and allowances from the first leg on, end to end. */
function developedLength(layout: WalkableLayout): number {
  let sum = 0;
  for (let i: number | undefined = 0; i !== undefined; i = layout.walked[i]?.endChild) {
    sum += (layout.legs[i]?.straight ?? 0) + (layout.legs[i]?.bend?.figures.allowance ?? 0);
  }
  return sum;
}

/** The blank of a layout. Whether its outline crosses itself is for `checks/`. */
export function unfold(layout: WalkableLayout): Blank {
  const drawn = outline(layout);
  const box = pathBounds(drawn);
  const corner: Pose = { x: -box.minX, y: -box.minY, heading: 0 };
  const legs = flatPoses(layout).map((pose) => compose(corner, pose));
  const path = placedPath(drawn, corner);
  const bends: BlankBend[] = [];
  const cutouts: BlankCutout[] = [];
  layout.legs.forEach((leg, i) => {
    const pose = legs[i];
    const parent = layout.part.legs[i]?.bend?.parent;
    const under = parent === undefined ? undefined : legs[parent];
    if (leg.bend && under) bends.push(blankBend(leg.bend, i, under));
    if (!pose) return;
    const put = placer(pose);
    for (const { cutout, item, centre, shape, contour } of leg.cutouts) {
      cutouts.push({ leg: i, cutout, item, centre: put(centre), heading: pose.heading, shape, contour: placedContour(contour, put) });
    }
  });
  const openings = cutouts.reduce((sum, { contour }) => sum + contourArea(contour), 0);
  return {
    outline: path,
    legs,
    plans: layout.legs.map((leg, i) => placedPath(leg.plan, legs[i] ?? corner)),
    bends,
    cutouts,
    bounds: { minX: 0, minY: 0, maxX: box.maxX - box.minX, maxY: box.maxY - box.minY },
    developedLength: developedLength(layout),
    area: signedArea(path) - openings,
    cutLength: pathLength(path) + cutouts.reduce((sum, { contour }) => sum + contourLength(contour), 0),
    pierces: 1 + cutouts.length,
  };
}
