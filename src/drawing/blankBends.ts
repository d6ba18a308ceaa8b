/** What the blank's lettering needs to know of a bend. */
import type { BlankBend, Layout } from '../core/part/layoutTypes';
import type { Words } from './words';

/** Whether a bend's line runs across the blank (its reading is an x) rather than along it. */
export const runsAcross = (bend: BlankBend): boolean => {
  const [from, to] = bend.centreLine;
  return Math.abs(to.y - from.y) >= Math.abs(to.x - from.x);
};

/** Leg id, field of the angle, and words such as `45° up`. */
export function bendWords(layout: Layout, bend: BlankBend, words: Words): { readonly leg: string; readonly words: string; readonly field: string } {
  const leg = layout.part.legs[bend.leg]?.id ?? String(bend.leg);
  const field = `${words.part}.legs.${leg}.bend.angle`;
  return { leg, field, words: `${words.say(field).replace(/°$/, '')}° ${bend.way}` };
}
