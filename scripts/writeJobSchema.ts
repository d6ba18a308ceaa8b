/** Writes `public/bendwright-job.schema.json`, so that other programs can check a job file. Run after a change of the schema. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { jsonSchemaText } from '../src/job/jsonSchema';

const folder = new URL('../public/', import.meta.url);
mkdirSync(folder, { recursive: true });
writeFileSync(new URL('bendwright-job.schema.json', folder), jsonSchemaText());
