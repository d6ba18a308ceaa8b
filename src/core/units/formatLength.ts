import { unreachable } from '../result';
import { MM_PER_INCH, RAD_PER_DEGREE } from './unitWords';

export interface LengthStyle {
  /** Decimal millimetres, decimal inches, or inches and a fraction. */
  readonly show: 'mm' | 'inch' | 'fraction';
  /** Decimal places, 0 to 9; 2 for mm and 3 for inches where left out. */
  readonly places?: number;
  /** The finest fraction; 64 where left out. */
  readonly denominator?: 2 | 4 | 8 | 16 | 32 | 64 | 128;
}

/** What is shown where there is no figure. */
const NO_FIGURE = '–';

/** A fraction this near to the length, mm, is shown as the length itself: finer than any rule, coarser than rounding. */
const SAME_AS_FRACTION_MM = 1e-6;

/**
 * A length as text, without its unit: `12.50`, `0.492`, `1 3/8`.
 *
 * Fractions are the nearest to the denominator, in lowest terms; `~1 3/8` says that the length is not exactly that. The mark is
 * for reading only: an entry with ~ in it is refused. Decimals carry no mark, since their places say how far they go.
 * @param mm any length; where it is no finite number the answer is a dash
 */
export function formatLength(mm: number, style: LengthStyle): string {
  if (!Number.isFinite(mm)) return NO_FIGURE;
  switch (style.show) {
    case 'mm':
      return decimals(mm, style.places ?? 2);
    case 'inch':
      return decimals(mm / MM_PER_INCH, style.places ?? 3);
    case 'fraction':
      return fraction(mm, style.denominator ?? 64);
    default:
      return unreachable(style.show);
  }
}

/** The unit to write after a length of this style. */
export const unitWord = (style: Pick<LengthStyle, 'show'>): 'mm' | 'in' => (style.show === 'mm' ? 'mm' : 'in');

/** An angle in degrees with its sign: `45°`, `67.5°`. At most `places` decimals, none that say nothing. A dash where it is not finite. */
export function formatAngle(rad: number, places = 2): string {
  if (!Number.isFinite(rad)) return NO_FIGURE;
  const text = decimals(rad / RAD_PER_DEGREE, places);
  return `${text.includes('.') ? text.replace(/\.?0+$/, '') : text}°`;
}

function decimals(value: number, places: number): string {
  const text = value.toFixed(Math.min(9, Math.max(0, Math.trunc(places) || 0)));
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text;
}

function fraction(mm: number, denominator: number): string {
  const size = Math.abs(mm);
  const steps = Math.round((size / MM_PER_INCH) * denominator);
  const exact = Math.abs(size - (steps / denominator) * MM_PER_INCH) <= SAME_AS_FRACTION_MM;
  const whole = Math.floor(steps / denominator);
  let over = steps - whole * denominator;
  let under = denominator;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  const part = over === 0 ? '' : `${over}/${under}`;
  const figure = whole > 0 && part !== '' ? `${whole} ${part}` : part || String(whole);
  return `${exact ? '' : '~'}${mm < 0 && steps > 0 ? '-' : ''}${figure}`;
}
