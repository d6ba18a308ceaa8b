/**
 * A number as it stands in a file: rounded once to `places`, never with an exponent, no trailing noughts but the first, no
 * minus nought. The caller has made sure that it is finite and below 1e21 in size, where a fixed form exists.
 */
export function formatReal(value: number, places: number): string {
  const fixed = value.toFixed(places).replace(/0+$/, '').replace(/\.$/, '.0');
  return Number(fixed) === 0 ? '0.0' : fixed;
}
