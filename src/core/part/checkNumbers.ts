/** Refuses part values that no leg, bend or cut-out can have, before any geometry is worked out. */
import type { Problem } from '../result';
import { cutoutCount } from './cutoutPlaces';
import { bendCalled, cutoutCalled, legCalled } from './names';
import type { Part } from './types';

/** Largest dimension of a leg, mm: ten metres, more than any sheet that a small workshop can carry. */
export const LARGEST_MM = 10_000;
/** Smallest length, width or opening, mm: a micrometre, finer than anything a workshop cuts or measures. */
export const SMALLEST_MM = 0.001;
/** Most openings in one part; a bureau's file of this size still opens anywhere. */
export const MOST_OPENINGS = 20_000;
/** Most legs in one part. */
export const MOST_LEGS = 200;

/** All problems found, each with the path of its field in the part (`legs.2.cutouts.0.shape.diameter`). */
export function checkNumbers(part: Part): Problem[] {
  const problems: Problem[] = [];
  const note = (field: string, says: string) => problems.push({ field, says });
  /** `above`: the value must be more than 0. */
  const size = (field: string, value: number, what: string, above: boolean) => {
    if (!Number.isFinite(value)) note(field, `${what} is not a number.`);
    else if (above && value <= 0) note(field, `${what} is ${value}. It must be more than 0.`);
    else if (above && value < SMALLEST_MM) note(field, `${what} is less than ${SMALLEST_MM} mm, the least Bendwright lays out.`);
    else if (!above && value < 0) note(field, `${what} is ${value}. It cannot be below 0.`);
    else if (value > LARGEST_MM) note(field, `${what} is more than ${LARGEST_MM} mm, the most Bendwright lays out.`);
  };
  const place = (field: string, value: number, what: string) => {
    if (!Number.isFinite(value)) note(field, `${what} is not a number.`);
    else if (Math.abs(value) > LARGEST_MM) note(field, `${what} is more than ${LARGEST_MM} mm away, the most Bendwright lays out.`);
  };

  if (part.legs.length === 0) note('legs', 'A part needs at least one leg.');
  if (part.legs.length > MOST_LEGS) note('legs', `A part of ${part.legs.length} legs is more than the ${MOST_LEGS} that Bendwright lays out.`);
  if (!Number.isFinite(part.thickness)) note('thickness', 'The thickness is not a number.');
  else if (part.thickness < SMALLEST_MM || part.thickness > 50) note('thickness', `The thickness is ${part.thickness} mm. It must be ${SMALLEST_MM} mm or more, up to 50 mm.`);

  const hangsOnEnd = new Set<number>();
  let openings = 0;
  part.legs.forEach((leg, i) => {
    const at = `legs.${i}`;
    const called = legCalled(part, i);
    size(`${at}.length`, leg.length, `${called}: the length`, true);
    size(`${at}.startWidth`, leg.startWidth, `${called}: the width at the start`, true);
    size(`${at}.endWidth`, leg.endWidth, `${called}: the width at the end`, true);
    for (const end of ['startShape', 'endShape'] as const) {
      const shape = leg[end];
      if (shape.kind === 'radius') size(`${at}.${end}.radius`, shape.radius, `${called}: the corner radius`, false);
      if (shape.kind === 'chamfer') size(`${at}.${end}.size`, shape.size, `${called}: the chamfer`, false);
    }
    if (i === 0) {
      if (leg.bend) note(`${at}.bend`, 'The first leg hangs on nothing and has no bend before it.');
    } else if (!leg.bend) {
      note(`${at}.bend`, `${called} needs a bend that joins it to the part.`);
    } else {
      const { bend } = leg;
      const bendIs = bendCalled(i);
      if (!Number.isInteger(bend.parent) || bend.parent < 0 || bend.parent >= i) note(`${at}.bend.parent`, `${called} must hang on a leg that stands before it.`);
      if (bend.edge === 'end') {
        if (hangsOnEnd.has(bend.parent)) note(`${at}.bend.edge`, `${legCalled(part, bend.parent)} already has a leg at its end.`);
        hangsOnEnd.add(bend.parent);
      } else if (!bend.seat) {
        note(`${at}.bend.seat`, `${called} is a side lug and must say where it sits on the edge.`);
      } else {
        place(`${at}.bend.seat.along.distance`, bend.seat.along.distance, `${called}: its place on the edge`);
        if (bend.seat.relief.kind !== 'none') {
          size(`${at}.bend.seat.relief.width`, bend.seat.relief.width, `${called}: the width of the relief`, true);
          size(`${at}.bend.seat.relief.depth`, bend.seat.relief.depth, `${called}: the depth of the relief`, false);
        }
      }
      const degrees = (bend.turn * 180) / Math.PI;
      if (!Number.isFinite(degrees)) note(`${at}.bend.turn`, `${bendIs}: the angle turned is not a number.`);
      else if (!(bend.turn > 0 && bend.turn <= Math.PI)) note(`${at}.bend.turn`, `${bendIs} turns by ${Number(degrees.toFixed(3))}°. It must be more than 0° and at most 180°.`);
      size(`${at}.bend.radius`, bend.radius, `${bendIs}: the inside radius`, false);
    }
    leg.cutouts.forEach((cutout, j) => {
      const field = `${at}.cutouts.${j}`;
      const is = cutoutCalled(part, i, j);
      const { shape, pattern } = cutout;
      if (shape.kind === 'round') size(`${field}.shape.diameter`, shape.diameter, `${is}: the diameter`, true);
      else {
        size(`${field}.shape.length`, shape.length, `${is}: the length`, true);
        size(`${field}.shape.width`, shape.width, `${is}: the width`, true);
        if (!Number.isFinite(shape.turn)) note(`${field}.shape.turn`, `${is}: the angle it is turned by is not a number.`);
        else if (Math.abs(shape.turn) > 2 * Math.PI) note(`${field}.shape.turn`, `${is} is turned by more than 360° either way. Give the angle between −360° and 360°.`);
        if (shape.kind === 'slot' && shape.length < shape.width && Number.isFinite(shape.length) && Number.isFinite(shape.width)) note(`${field}.shape.length`, `${is} is ${shape.length} mm long and ${shape.width} mm wide. A slot is at least as long as it is wide.`);
        if (shape.kind === 'rectangle') {
          const most = Math.min(shape.length, shape.width) / 2;
          size(`${field}.shape.corner`, shape.corner, `${is}: the corner radius`, false);
          if (Number.isFinite(shape.corner) && Number.isFinite(most) && shape.corner > most) note(`${field}.shape.corner`, `${is} has a corner radius of ${shape.corner} mm; half its shorter side, ${most} mm, is the most.`);
        }
      }
      place(`${field}.along.distance`, cutout.along.distance, `${is}: its place along the leg`);
      place(`${field}.across.distance`, cutout.across.distance, `${is}: its place across the leg`);
      for (const key of ['count', 'alongCount', 'acrossCount'] as const) {
        const count = (pattern as Partial<Record<typeof key, number>>)[key];
        if (count === undefined) continue;
        if (!Number.isFinite(count)) note(`${field}.pattern.${key}`, `${is}: how often it repeats is not a number.`);
        else if (!(Number.isInteger(count) && count >= 1)) note(`${field}.pattern.${key}`, `${is} repeats ${count} times. It must be a whole number from 1.`);
        else if (count > MOST_OPENINGS) note(`${field}.pattern.${key}`, `${is} repeats more than ${MOST_OPENINGS} times, the most openings Bendwright lays out.`);
      }
      for (const key of ['pitch', 'alongPitch', 'acrossPitch'] as const) {
        const pitch = (pattern as Partial<Record<typeof key, number>>)[key];
        if (pitch !== undefined) place(`${field}.pattern.${key}`, pitch, `${is}: the pitch`);
      }
      openings += cutoutCount(pattern);
    });
  });
  if (Number.isFinite(openings) && openings > MOST_OPENINGS) note('legs', `The part has ${openings} openings; ${MOST_OPENINGS} is the most Bendwright lays out.`);
  return problems;
}
