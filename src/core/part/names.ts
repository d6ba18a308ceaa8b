import type { Part } from './types';

/** A, B … Z, AA, AB …: the letter by which leg `index` is read aloud. */
export function legLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : legLetter(Math.floor(index / 26) - 1) + letter;
}

/** How a leg is called in a sentence: `Leg B (crank)`, or `Leg B` where it has no name. */
export function legCalled(part: Pick<Part, 'legs'>, index: number): string {
  const name = part.legs[index]?.name.trim();
  return name ? `Leg ${legLetter(index)} (${name})` : `Leg ${legLetter(index)}`;
}

/** A bend goes by the index of the leg it leads to. */
export const bendCalled = (leg: number): string => `Bend ${leg}`;

/** How a cut-out is called: its name, or its kind and leg; in a row or grid with its number from 1. */
export function cutoutCalled(part: Pick<Part, 'legs'>, leg: number, cutout: number, item?: number): string {
  const c = part.legs[leg]?.cutouts[cutout];
  const kind = { round: 'Hole', slot: 'Slot', rectangle: 'Opening' }[c?.shape.kind ?? 'round'];
  const own = c?.name.trim();
  const repeated = item !== undefined && c !== undefined && c.pattern.kind !== 'single';
  if (own) return repeated ? `${own} ${item + 1}` : own;
  return repeated ? `${kind} ${item + 1} of the ${c.pattern.kind} in leg ${legLetter(leg)}` : `${kind} ${cutout + 1} of leg ${legLetter(leg)}`;
}

/** A figure in a sentence: two places, and no minus nought. */
export const figure = (value: number, places = 2): string => {
  const text = value.toFixed(places);
  return Number(text) === 0 ? (0).toFixed(places) : text;
};
