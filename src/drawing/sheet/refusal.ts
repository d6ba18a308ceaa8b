/** What stands on the sheet of a part that may not go out: that it may not, and why. */
import type { Block } from './block';
import { baseDrop, lineHeight, stacked, text, unbroken } from './block';
import { PAPER_PX_MM } from '../page';
import { sentencesBlock } from './sentences';
import { brokenTo } from './wording';

const SAYS = 'Not for the bench';
/** So many reasons can be told in large letters. */
const FEW = 5;
const WHY = 'This part cannot be made as it stands. No shape and no sizes are shown until this is put right:';

export function refusal(reasons: readonly string[]): Block {
  return {
    least: 0,
    natural: 0,
    liked: 180,
    at: (width) => {
      const large = brokenTo(SAYS, 'sheet warning', width / PAPER_PX_MM);
      const step = lineHeight('sheet warning');
      const head = unbroken(large.length * step + 4, (at) => large.map((said, i) => text(`refusal ${i}`, 'sheet warning', { x: at.x, y: at.y - 2 - baseDrop('sheet warning') - i * step }, said)));
      return stacked([head, sentencesBlock('reasons', WHY, reasons.map((says) => ({ sign: 'stop', says })), reasons.length > FEW ? 'dimension text' : 'sheet title').at(width)], 2);
    },
  };
}
