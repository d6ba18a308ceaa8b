import { bad, good, unreachable, type Result } from '../result';
import { checkBend, LOWEST_K } from './bendLimits';
import { measuredK } from './measuredK';
import { sayFigure, sayMm } from './say';
import type { AllowanceRule } from './types';

/**
 * Depth of the neutral line from the inside face as a share of the thickness, by the rule of the stock.
 * @param turn rad turned from flat, above 0, to π
 * @param radius mm at the inside face, 0 to 1000
 * @param thickness mm, above 0, to 50
 * Refuses sizes out of range (`thickness`, `radius`, `turn`), a fixed K outside 0 to 1 (`rule.k`), a radius for which the rule
 * has no answer (`radius`), and a measured table that is empty, contradicts itself or would have to be extrapolated.
 */
export function kFactor(rule: AllowanceRule, turn: number, radius: number, thickness: number): Result<number> {
  const fit = checkBend(turn, radius, thickness);
  if (!fit.ok) return fit;
  switch (rule.kind) {
    case 'fixedK':
      return fixedK(rule.k);
    case 'din6935':
      return din6935K(radius, thickness);
    case 'handbook':
      return handbookK(HANDBOOK_SHARE[rule.metal], radius, thickness);
    case 'aviation':
      return aviationK(radius, thickness);
    case 'measured':
      return measuredK(rule.rows, turn, radius, thickness);
    default:
      return unreachable(rule);
  }
}

/** Source: definition. The neutral line lies inside the metal, so 0 to 1; sheet-metal handbooks give 0.33 to 0.5. */
function fixedK(k: number): Result<number> {
  if (!Number.isFinite(k)) return bad('rule.k', 'K is not a number. It lies between 0, the inside face, and 1, the outside face.');
  if (k < 0 || k > 1) {
    return bad('rule.k', `K lies between 0, the inside face, and 1, the outside face; ${sayFigure(k)} is outside the metal.`);
  }
  return good(k);
}

/** Up to this r/t DIN 6935 uses its logarithm; above, the neutral line lies in mid-thickness. */
const DIN_LARGEST_RATIO = 5;

/** The r/t at which DIN's k reaches 0: 0.65 + ½ log10(r/t) = 0. */
const DIN_RATIO_OF_ZERO = 10 ** -1.3;

/**
 * DIN 6935, cold bending of flat steel: k = 0.65 + ½ log10(r/t) up to r/t = 5, then 1; DIN's neutral line lies k t/2 deep, so K = k/2.
 * Source: Tabellenbuch Metall, blank length of bent parts (reprint of DIN 6935), read in an excerpt.
 * At r/t = 5 the logarithm gives 0.9995, so there k steps by 0.0005.
 *
 * DIN also sets the whole deduction to 0 for opening angles above 165° (turned less than 15°), as negligible beside its whole
 * millimetres. We keep the formula there: it runs on smoothly to 0, and a hole may not be out by the 0.1 to 0.5 mm at stake (up to 3 mm sheet).
 */
function din6935K(radius: number, thickness: number): Result<number> {
  const ratio = radius / thickness;
  const k = ratio > DIN_LARGEST_RATIO ? 1 : 0.65 + 0.5 * Math.log10(ratio);
  if (k > 0) return good(k / 2);
  // One per cent above the limit, so that the figure as printed, cut to three figures, is itself accepted.
  const smallest = Number((DIN_RATIO_OF_ZERO * thickness * 1.01).toPrecision(3));
  return bad(
    'radius',
    `DIN 6935 has no K for so tight a bend: ${sayMm(radius)} inside radius in ${sayMm(thickness)} metal. Make the radius ${sayMm(smallest)} or more, or use another rule.`,
    smallest - radius,
  );
}

/**
 * Machinery's Handbook, 31st edition, Bending Sheet Metal, formulas (32) to (34), read: L = a T + 1.57 R for 90°, other angles in
 * proportion to the angle turned. a = 0.55 soft copper and brass, 0.64 half-hard copper and brass, soft steel, aluminium,
 * 0.71 bronze, hard copper, cold-rolled and spring steel.
 */
const HANDBOOK_SHARE = { soft: 0.55, 'half-hard': 0.64, hard: 0.71 } as const;
const HANDBOOK_RADIUS_SHARE = 1.57;

function handbookK(share: number, radius: number, thickness: number): Result<number> {
  const perRightAngle = Math.PI / 2;
  return formulaK('handbook', HANDBOOK_RADIUS_SHARE / perRightAngle, share / perRightAngle, radius, thickness);
}

/**
 * Aviation handbooks: BA = (0.01743 R + 0.0078 T) per degree turned, 1° to 180°.
 * Source: read in Sheet Metal Workbook, 6th edition; that FAA-H-8083-31 prints the same is from memory.
 */
const AVIATION_RADIUS_SHARE = 0.01743;
const AVIATION_THICKNESS_SHARE = 0.0078;

function aviationK(radius: number, thickness: number): Result<number> {
  const perDegree = Math.PI / 180;
  return formulaK('aviation', AVIATION_RADIUS_SHARE / perDegree, AVIATION_THICKNESS_SHARE / perDegree, radius, thickness);
}

/**
 * The K that gives the allowance of a formula BA/θ = c R + d T, which is K = d + (c − 1) R/T. The formulas round π, so c is a
 * little under 1: in very wide bends of thin metal that outweighs the thickness itself, and the formula is refused.
 */
function formulaK(name: string, radiusShare: number, thicknessShare: number, radius: number, thickness: number): Result<number> {
  const k = thicknessShare + ((radiusShare - 1) * radius) / thickness;
  if (k >= LOWEST_K) return good(k);
  const largest = ((thicknessShare - LOWEST_K) / (1 - radiusShare)) * thickness;
  return bad(
    'radius',
    `The ${name} formula rounds π, and at ${sayMm(radius)} inside radius in ${sayMm(thickness)} metal that outweighs the thickness. Keep the radius to ${sayMm(largest)}, or use a fixed K.`,
    radius - largest,
  );
}
