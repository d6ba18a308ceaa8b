/** What the drawings are told about the job: figures as typed where they are plain, worked out where they are not. */
import { formatAngle, formatLength } from '../core/units/formatLength';
import { plainNumber } from '../core/units/plainNumber';
import { readField } from '../job/fields';
import type { Job } from '../job/schema';
import { short, type Words } from './words';

/** @param values of every entry of the part that could be worked out, by field path, mm and rad */
export function partWords(job: Job, part: string, values: ReadonlyMap<string, number>): Words {
  const length = (mm: number): string => formatLength(mm, { show: job.units.show, denominator: job.units.denominator });
  // A number as typed may stand as it is only where it was typed in the unit that lengths are shown in.
  const typedUnit = (job.units.plain === 'mm') === (job.units.show === 'mm');
  return {
    part: `parts.${part}`,
    length,
    say: (field) => {
      const held = readField(job, field);
      const typed = typeof held === 'string' ? held.trim() : '';
      const isAngle = field.endsWith('.angle') || field.endsWith('.turn');
      const value = values.get(field);
      if (plainNumber(typed) !== undefined && (typedUnit || isAngle)) return typed.replace(',', '.');
      if (value === undefined) return typed;
      return isAngle ? formatAngle(value).replace('°', '') : short(length(value));
    },
  };
}
