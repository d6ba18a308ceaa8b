/** What can hurt, in a few plain lines along the foot of a sheet. Common practice; local rules and licensed practice come first. */
import { PAPER_PX_MM } from '../page';
import { baseDrop, lineHeight, rule, text, unbroken, widthOf, type Laid } from './block';
import { brokenTo } from './wording';

export const CAUTIONS: readonly string[] = [
  'Cut edges are sharp: deburr all round before handling; gloves for carrying sheet, never near a turning drill.',
  'Eye protection when cutting, drilling and filing; clamp the work.',
  'Laser and folder are worked by their own rules.',
  'Not for lifting or holding people; structural and pressure work is out of scope.',
  'Local rules and licensed practice come first.',
];

const TITLE = 'Take care';
const ROLE = 'sheet text';
const OVER = 1.6;

export function cautionsFoot(width: number): Laid {
  const indent = widthOf(TITLE, 'sheet heading') + 4;
  const lines = brokenTo(CAUTIONS.join(' '), ROLE, (width - indent) / PAPER_PX_MM);
  const step = lineHeight(ROLE);
  return unbroken(OVER + lines.length * step, (at) => {
    const base = at.y - OVER - baseDrop(ROLE);
    return [
      rule('cautions rule', 'sheet rule', [at, { x: at.x + width, y: at.y }]),
      text('cautions heading', 'sheet heading', { x: at.x, y: base }, TITLE),
      ...lines.map((said, i) => text(`cautions ${i}`, ROLE, { x: at.x + indent, y: base - i * step }, said)),
    ];
  });
}
