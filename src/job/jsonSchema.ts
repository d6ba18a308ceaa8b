import * as z from 'zod/mini';
import { jobSchema, VERSION } from './schema';

/**
 * The schema of the job file as JSON Schema, draft 2020-12. The `$id` is relative, so that it holds wherever the app is served.
 * What a schema cannot say (ids, references, whether entries work out) is not in it.
 */
export function jsonSchemaText(): string {
  const { $schema, ...rest } = z.toJSONSchema(jobSchema, { target: 'draft-2020-12' });
  const whole = { $schema, $id: 'bendwright-job.schema.json', title: `Bendwright job, version ${VERSION}`, ...rest };
  return `${JSON.stringify(whole, null, 2)}\n`;
}
