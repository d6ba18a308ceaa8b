/** The slider that bends the part: its bends are made one after another, in the order of their numbers. */
import type { Layout } from '../../core/part/layoutTypes';

/** Shown in degrees: at 1 the slider's keys turn the metal by one degree. */
const inDegrees = (turn: number): number => (turn * 180) / Math.PI;

interface Step {
  readonly leg: number;
  readonly degrees: number;
}

const steps = (layout: Layout): readonly Step[] =>
  layout.legs.flatMap((leg, i) => (leg.bend ? [{ leg: i, degrees: inDegrees(leg.bend.figures.turn) }] : []));

/** Degrees of all bends together: the slider's far end. */
export const allDegrees = (layout: Layout): number => steps(layout).reduce((sum, s) => sum + s.degrees, 0);

/**
 * How far the bend leading to each leg is made, 0 to 1, once the metal has been turned by so many degrees in all.
 * Legs without a bend have 1.
 */
export function bentAfter(layout: Layout, degrees: number): readonly number[] {
  const bent = layout.legs.map(() => 1);
  let left = degrees;
  for (const step of steps(layout)) {
    bent[step.leg] = step.degrees > 0 ? Math.min(1, Math.max(0, left / step.degrees)) : 1;
    left -= step.degrees;
  }
  return bent;
}

const figure = (degrees: number): string => `${Number(degrees.toFixed(1))}°`;

/** The stage in words: "flat", "bend 2 of 3, 30° of 45°", "finished". */
export function stageInWords(layout: Layout, degrees: number): string {
  const all = steps(layout);
  if (degrees <= 0) return 'flat';
  let left = degrees;
  for (const [i, step] of all.entries()) {
    if (left < step.degrees || (i < all.length - 1 && left === step.degrees)) {
      return `bend ${i + 1} of ${all.length}, ${figure(left)} of ${figure(step.degrees)}`;
    }
    left -= step.degrees;
  }
  return 'finished';
}
