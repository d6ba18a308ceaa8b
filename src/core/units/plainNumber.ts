/** Digits with at most one point or comma, and a sign. */
const PLAIN = /^([-−+]?)(\d+(?:[.,]\d*)?|[.,]\d+)$/;

/** The number of an entry that is a plain number without a unit; undefined for anything else. */
export function plainNumber(text: string): number | undefined {
  const found = PLAIN.exec(text.trim());
  if (!found?.[2]) return undefined;
  const size = Number(found[2].replace(',', '.'));
  return found[1] === '-' || found[1] === '−' ? -size : size;
}
