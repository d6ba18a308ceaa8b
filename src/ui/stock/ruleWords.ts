/** The rules by which a stock reckons its bends, as they are offered. */
export const RULES = [
  ['fixedK', 'a K of your own'],
  ['din6935', 'DIN 6935'],
  ['handbook', 'handbook, by hardness'],
  ['aviation', 'aviation handbook'],
  ['measured', 'table of measured bends'],
] as const;

export const METALS_BY_HARDNESS = [
  ['soft', 'soft'],
  ['half-hard', 'half hard'],
  ['hard', 'hard'],
] as const;
