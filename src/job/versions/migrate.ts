/**
 * Brings an older job document up to date, one version at a time. Version 1 is the first, so there is nothing to bring up
 * yet. A new version adds one entry to `MIGRATIONS` and one saved job of the version before to `tests/job/saved/`.
 */
import { good, bad, type Result } from '../../core/result';

/** A document of some version: nothing is known of it but that it is an object. */
export type JobDocument = { readonly [key: string]: unknown };

/** One step up. `migrate` may throw on a document that was not of its version; that is caught and said. */
export interface Migration {
  readonly from: number;
  readonly to: number;
  /** What changes for the user, as a sentence. */
  readonly describe: string;
  readonly migrate: (document: JobDocument) => JobDocument;
}

export const MIGRATIONS: readonly Migration[] = [];

export interface Migrated {
  readonly document: JobDocument;
  /** What was changed, in order, for the user to read. */
  readonly notes: readonly string[];
}

/**
 * Walks a document up to version `target`. The version number is set here, so that a step cannot forget it.
 * Refuses a version with no way up, and a document that a step cannot read.
 */
export function migrate(document: JobDocument, target: number, migrations: readonly Migration[]): Result<Migrated> {
  let now = document;
  const notes: string[] = [];
  for (let version = Number(document['version']); version !== target; ) {
    const step = migrations.find((m) => m.from === version && m.to > version && m.to <= target);
    if (!step) return bad('version', `There is no way from version ${version} of the job to version ${target}. Take a copy saved by a later Bendwright.`);
    try {
      now = { ...step.migrate(now), version: step.to };
    } catch {
      return bad('version', `This job says it is version ${version}, but it does not look like one. Take another copy.`);
    }
    notes.push(`Brought up from version ${step.from} to ${step.to}: ${step.describe}`);
    version = step.to;
  }
  return good({ document: now, notes });
}
