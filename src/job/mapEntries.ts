/** Every entry of a job and what it stands for. */
import { unreachable } from '../core/result';
import type { Wanted } from '../core/units/evaluate';
import type { Job, JobBend, JobCutoutShape, JobEndShape, JobLeg, JobPart, JobPattern, JobRule, JobStock } from './schema';

/** The new text of an entry, given what its field wants. */
type Change = (text: string, wanted: Wanted) => string;

function shapeEntries(shape: JobEndShape, change: Change): JobEndShape {
  switch (shape.kind) {
    case 'square':
    case 'round':
      return shape;
    case 'radius':
      return { ...shape, radius: change(shape.radius, 'length') };
    case 'chamfer':
      return { ...shape, size: change(shape.size, 'length') };
    default:
      return unreachable(shape);
  }
}

function cutoutShapeEntries(shape: JobCutoutShape, change: Change): JobCutoutShape {
  const length = (text: string): string => change(text, 'length');
  switch (shape.kind) {
    case 'round':
      return { ...shape, diameter: length(shape.diameter) };
    case 'slot':
      return { ...shape, length: length(shape.length), width: length(shape.width), turn: change(shape.turn, 'angle') };
    case 'rectangle':
      return { ...shape, length: length(shape.length), width: length(shape.width), corner: length(shape.corner), turn: change(shape.turn, 'angle') };
    default:
      return unreachable(shape);
  }
}

function patternEntries(pattern: JobPattern, change: Change): JobPattern {
  switch (pattern.kind) {
    case 'single':
      return pattern;
    case 'row':
      return { ...pattern, count: change(pattern.count, 'count'), pitch: change(pattern.pitch, 'length') };
    case 'grid':
      return {
        ...pattern,
        alongCount: change(pattern.alongCount, 'count'),
        alongPitch: change(pattern.alongPitch, 'length'),
        acrossCount: change(pattern.acrossCount, 'count'),
        acrossPitch: change(pattern.acrossPitch, 'length'),
      };
    default:
      return unreachable(pattern);
  }
}

function bendEntries(bend: JobBend, change: Change): JobBend {
  const changed = { ...bend, angle: change(bend.angle, 'angle'), radius: change(bend.radius, 'length') };
  if (!bend.seat) return changed;
  const { along, relief } = bend.seat;
  return {
    ...changed,
    seat: {
      ...bend.seat,
      along: { ...along, distance: change(along.distance, 'length') },
      relief: relief.kind === 'none' ? relief : { ...relief, width: change(relief.width, 'length'), depth: change(relief.depth, 'length') },
    },
  };
}

function legEntries(leg: JobLeg, change: Change): JobLeg {
  const changed: JobLeg = {
    ...leg,
    length: change(leg.length, 'length'),
    startWidth: change(leg.startWidth, 'length'),
    endWidth: change(leg.endWidth, 'length'),
    startShape: shapeEntries(leg.startShape, change),
    endShape: shapeEntries(leg.endShape, change),
    cutouts: leg.cutouts.map((cutout) => ({
      ...cutout,
      shape: cutoutShapeEntries(cutout.shape, change),
      along: { ...cutout.along, distance: change(cutout.along.distance, 'length') },
      across: { ...cutout.across, distance: change(cutout.across.distance, 'length') },
      pattern: patternEntries(cutout.pattern, change),
    })),
  };
  return leg.bend ? { ...changed, bend: bendEntries(leg.bend, change) } : changed;
}

export const mapPartEntries = (part: JobPart, change: Change): JobPart => ({
  ...part,
  quantity: change(part.quantity, 'count'),
  legs: part.legs.map((leg) => legEntries(leg, change)),
});

function ruleEntries(rule: JobRule, change: Change): JobRule {
  switch (rule.kind) {
    case 'din6935':
    case 'handbook':
    case 'aviation':
      return rule;
    case 'fixedK':
      return { ...rule, k: change(rule.k, 'number') };
    case 'measured':
      return {
        ...rule,
        rows: rule.rows.map((row) => ({
          angle: change(row.angle, 'angle'),
          radius: change(row.radius, 'length'),
          deduction: change(row.deduction, 'length'),
        })),
      };
    default:
      return unreachable(rule);
  }
}

export const mapStockEntries = (stock: JobStock, change: Change): JobStock => ({
  ...stock,
  thickness: change(stock.thickness, 'length'),
  radius: change(stock.radius, 'length'),
  density: change(stock.density, 'number'),
  rule: ruleEntries(stock.rule, change),
});

/** The steps a drag snaps to. */
export const mapStepEntries = (step: Job['step'], change: Change): Job['step'] => ({
  length: change(step.length, 'length'),
  angle: change(step.angle, 'angle'),
});
