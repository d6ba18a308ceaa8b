import type { WorkedOut } from '../../job/workOut';

export interface PartStatus {
  readonly level: 'good' | 'care' | 'stop';
  readonly words: string;
}

export const wrongCount = ({ problems, findings }: WorkedOut): number => problems.length + findings.filter(({ level }) => level === 'stop').length;
export const careCount = ({ findings }: WorkedOut): number => findings.filter(({ level }) => level === 'care').length;

/** How a part stands, in the fewest words: `ready to cut`, `2 to look at`, `1 to put right`. */
export function partStatus(worked: WorkedOut): PartStatus {
  const wrong = wrongCount(worked);
  if (wrong > 0) return { level: 'stop', words: `${wrong} to put right` };
  const care = careCount(worked);
  if (care > 0) return { level: 'care', words: `${care} to look at` };
  return { level: 'good', words: worked.shape?.blank.bends.length === 0 ? 'flat, ready to cut' : 'ready to cut' };
}
