import type { Job } from './schema';

/** The text of a job file: JSON, two spaces, a final newline. The same job gives the same text. */
export const saveJob = (job: Job): string => `${JSON.stringify(job, null, 2)}\n`;
