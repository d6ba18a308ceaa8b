import type { Wanted } from '../../core/units/evaluate';
import { plainNumber } from '../../core/units/plainNumber';

const placesOf = (text: string): number => /[.,](\d*)$/.exec(text.trim())?.[1]?.length ?? 0;

/** A number written with at most `places` decimals and none that say nothing but those it is told to `keep`. */
export function plainText(value: number, places: number, keep = 0): string {
  const text = value.toFixed(places);
  const [whole = '0', decimals = ''] = text.split('.');
  const kept = decimals.replace(/0+$/, '').padEnd(Math.min(keep, places), '0');
  const short = kept ? `${whole}.${kept}` : whole;
  return Number(short) === 0 ? short.replace('-', '') : short;
}

/** How far one press of an arrow key goes: 0.1, with Shift 1, with Alt 0.01 (guide, "Keys"). A count goes by whole numbers. */
export function nudgeStep(wanted: Wanted, keys: { readonly shift: boolean; readonly alt: boolean }): number {
  if (wanted === 'count') return 1;
  return keys.shift ? 1 : keys.alt ? 0.01 : 0.1;
}

/**
 * An entry one step up or down; undefined where it is not a plain number. As many decimals stay as were typed.
 * @param step in the unit the entry is in, signed
 */
export function nudged(text: string, step: number): string | undefined {
  const value = plainNumber(text);
  if (value === undefined) return undefined;
  const typed = placesOf(text);
  const places = Math.min(9, Math.max(typed, placesOf(String(Math.abs(step)))));
  return plainText(value + step, places, typed);
}
