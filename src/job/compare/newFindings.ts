/** What becomes too tight or too short in another stock: the sentences that the stock the part is made of now does not have. */
import type { Finding } from '../../core/part/layoutTypes';
import type { WorkedOut } from '../workOut';

export interface NewFinding {
  readonly level: 'stop' | 'care';
  readonly says: string;
}

/** A sentence without its figures: `starts 1.50 mm from bend 1` and `starts 0.30 mm from bend 1` say the same, `reaches 0.70 mm into bend 1` does not. */
const wording = (says: string): string => says.replace(/\d+(\.\d+)?/g, '0');

/** A finding that is there already is news where it was worth a look and now stops the part, or where something else is said of the same place. */
const known = (now: readonly Finding[], { key, level, says }: Finding): boolean =>
  now.some((before) => before.key === key && (before.level === 'stop' || (before.level === level && wording(before.says) === wording(says))));

/**
 * Fields at fault first, then stop, then care; each sentence once.
 * @param now the part in the stock it is made of
 */
export function newFindings(now: WorkedOut, other: WorkedOut): readonly NewFinding[] {
  const before = new Set(now.problems.map(({ says }) => says));
  const faults = other.problems.filter(({ says }) => !before.has(says)).map(({ says }): NewFinding => ({ level: 'stop', says }));
  const fresh = (level: 'stop' | 'care') => other.findings.filter((f) => f.level === level && !known(now.findings, f)).map(({ says }): NewFinding => ({ level, says }));
  const all = [...faults, ...fresh('stop'), ...fresh('care')];
  return all.filter(({ says }, i) => all.findIndex((each) => each.says === says) === i);
}
