/** Opens and saves the job file. */
import { shown } from '../core/units/refuse';
import { checkReferences } from './references';
import { readJson } from './readJson';
import { FORMAT, jobSchema, VERSION, type Job } from './schema';
import { capped, schemaFaults, type Fault } from './schemaFaults';
import { migrate, MIGRATIONS, type JobDocument, type Migration } from './versions/migrate';

/** The job, with notes on what was brought up to date; or every fault found. */
export type Opened =
  | { readonly ok: true; readonly job: Job; readonly notes: readonly string[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

const refuse = (where: string, says: string): Opened => ({ ok: false, faults: [{ where, says }] });

const isDocument = (value: unknown): value is JobDocument => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Opens the text of a job file: JSON, format, version (older ones are brought up), schema, references, in that order; each is
 * looked at only where the one before was good. Never throws and changes nothing.
 * @param migrations the steps up from older versions; given only by tests
 */
export function openJob(text: string, migrations: readonly Migration[] = MIGRATIONS): Opened {
  const read = readJson(text);
  if (!read.ok) return refuse('the file', read.problem.says);

  const found = read.value;
  if (!isDocument(found)) return refuse('the file', 'This is not a Bendwright job. Choose a file saved by Bendwright.');
  const format = Object.hasOwn(found, 'format') ? found['format'] : undefined;
  if (format !== FORMAT) {
    const is = typeof format === 'string' ? ` It calls itself "${shown(format)}".` : '';
    return refuse('the file', `This is not a Bendwright job.${is} A job file begins with "format": "${FORMAT}".`);
  }
  const version = Object.hasOwn(found, 'version') ? found['version'] : undefined;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return refuse('version', `the version of the job should be a whole number, ${VERSION} for this Bendwright.`);
  }
  if (version > VERSION) {
    return refuse(
      'version',
      `This job was made by a newer Bendwright (version ${version}; this one reads up to ${VERSION}). Open it with that one; nothing has been changed.`,
    );
  }

  const migrated = migrate(found, VERSION, migrations);
  if (!migrated.ok) return refuse('version', migrated.problem.says);

  const checked = jobSchema.safeParse(migrated.value.document);
  if (!checked.success) return { ok: false, faults: capped(schemaFaults(migrated.value.document, checked.error.issues)) };
  const faults = checkReferences(checked.data);
  if (faults.length > 0) return { ok: false, faults: capped(faults) };
  return { ok: true, job: checked.data, notes: migrated.value.notes };
}
