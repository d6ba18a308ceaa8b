/** What is said of each rule by which a stock reckons its bends, on screen and on paper. */
import { unreachable } from '../core/result';
import type { JobRule } from './schema';

const NO_STRIP = 'no test strip of your own yet. Bend one before a batch.';

/** One sentence: what the allowance in force stands on. */
export function ruleStandsOn(rule: JobRule): string {
  switch (rule.kind) {
    case 'fixedK':
      return `One K for every bend, as typed; ${NO_STRIP}`;
    case 'din6935':
      return `Figures of DIN 6935; ${NO_STRIP}`;
    case 'handbook':
      return `Handbook figures for ${rule.metal} metal; ${NO_STRIP}`;
    case 'aviation':
      return `The aviation handbook formula; ${NO_STRIP}`;
    case 'measured':
      return rule.rows.length === 1 ? 'Stands on 1 measured bend of your own.' : `Stands on ${rule.rows.length} measured bends of your own.`;
    default:
      return unreachable(rule);
  }
}

/** One line: where the figures of a rule come from. Each source stands beside its formula in `src/core/bending`. */
export function ruleSource(rule: JobRule): string {
  switch (rule.kind) {
    case 'fixedK':
      return 'Source: yours. K is how deep the neutral line lies from the inside face, as a share of the thickness; 0.3 to 0.5 is usual.';
    case 'din6935':
      return 'Source: DIN 6935. K = ½ (0.65 + ½ log₁₀(r/t)) up to r/t = 5, then 0.5.';
    case 'handbook':
      return 'Source: developed-length formulas of the machinist’s handbooks for soft, half-hard and hard metal.';
    case 'aviation':
      return 'Source: aviation handbook formula, (0.01743 r + 0.0078 t) for each degree.';
    case 'measured':
      return 'Source: your own measurements. The deduction is both outside legs together less the length of the blank; between rows it is interpolated.';
    default:
      return unreachable(rule);
  }
}
