import type { Wanted } from '../../core/units/evaluate';
import type { Result } from '../../core/result';
import { readField } from '../../job/fields';
import type { Job } from '../../job/schema';
import { useBench } from '../../store/bench';
import { EntryField } from '../fields/EntryField';
import { showValue } from '../fields/fieldReading';

interface SettingFieldProps {
  readonly field: string;
  readonly wanted: Wanted;
  readonly label: string;
  /** See `readings.ts`. A value that is no number: it waits for another entry, which is told there. */
  readonly reading: (job: Job) => Result<number>;
  /** Shows what was typed, where the value stands beside it. */
  readonly asTyped?: boolean;
}

/** A number that belongs to no part: of a stock, a size, or the job. */
export function SettingField({ field, wanted, label, reading, asTyped = false }: SettingFieldProps) {
  const job = useBench((state) => state.job);
  const held = readField(job, field);
  const typed = typeof held === 'string' ? held : '';
  return (
    <EntryField
      key={field}
      field={field}
      wanted={wanted}
      label={label}
      value={reading}
      format={(value) => (asTyped || !Number.isFinite(value) ? typed : showValue(job.units, wanted, value))}
    />
  );
}
