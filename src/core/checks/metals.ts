/** Metals as far as the checks know them. */
export type Metal = 'steel' | 'stainless' | 'brass' | 'copper' | 'bronze' | 'nickel silver' | 'aluminium' | 'other';

/**
 * Least inside radius as a multiple of the thickness, bent across the grain. Steel: DIN 6935:1975 for tensile strength
 * up to 390 N/mm² gives 1.0 to 1.25 t for 1 to 4 mm; the others are common practice, no source (half-hard brass 1.0,
 * stainless 1.0, nickel silver 1.5, soft copper and aluminium 0.5).
 */
export const LEAST_RADIUS_BY_THICKNESS: Readonly<Record<Metal, number | undefined>> = {
  steel: 1,
  stainless: 1,
  brass: 1,
  copper: 0.5,
  bronze: 1,
  'nickel silver': 1.5,
  aluminium: 0.5,
  other: undefined,
};
