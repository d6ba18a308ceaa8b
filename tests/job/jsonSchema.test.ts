import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { jsonSchemaText } from '../../src/job/jsonSchema';

const published = readFileSync(new URL('../../public/bendwright-job.schema.json', import.meta.url), 'utf8');
const schema = JSON.parse(published);

/**
 * As much of JSON Schema 2020-12 as the published file uses, read from the standard and not from the library that wrote it.
 * A keyword that is not known here is a fault, so that the check cannot pass by overlooking one.
 */
function faults(rule: any, value: any, at: string): string[] {
  const found: string[] = [];
  const is = (type: string): boolean =>
    type === 'object' ? typeof value === 'object' && value !== null && !Array.isArray(value) : type === 'array' ? Array.isArray(value) : typeof value === type;
  for (const [key, wants] of Object.entries<any>(rule)) {
    const must = (holds: boolean, says: string): void => {
      if (!holds) found.push(says);
    };
    if (['$schema', '$id', 'title'].includes(key)) continue;
    else if (key === 'type') must(is(wants), `${at} is no ${wants}`);
    else if (key === 'const') must(value === wants, `${at} is not ${wants}`);
    else if (key === 'enum') must(wants.includes(value), `${at} is none of ${wants}`);
    else if (key === 'maxLength') must(value.length <= wants, `${at} is too long`);
    else if (key === 'minItems') must(value.length >= wants, `${at} is too short`);
    else if (key === 'pattern') must(new RegExp(wants, 'u').test(value), `${at} does not match`);
    else if (key === 'items') (value as any[]).forEach((item, i) => found.push(...faults(wants, item, `${at}/${i}`)));
    else if (key === 'properties') {
      for (const [name, inner] of Object.entries(wants)) if (value && Object.hasOwn(value, name)) found.push(...faults(inner, value[name], `${at}/${name}`));
    } else if (key === 'required') for (const name of wants) must(value && Object.hasOwn(value, name), `${at}/${name} is missing`);
    else if (key === 'additionalProperties' && wants === false) {
      for (const name of Object.keys(value ?? {})) must(Object.hasOwn(rule.properties, name), `${at}/${name} is not known`);
    } else if (key === 'anyOf') must(wants.some((each: any) => faults(each, value, at).length === 0), `${at} fits none`);
    else if (key === 'oneOf') must(wants.filter((each: any) => faults(each, value, at).length === 0).length === 1, `${at} does not fit one`);
    else found.push(`${at}: the schema uses ${key}`);
  }
  return found;
}

describe('the published schema', () => {
  it('is up to date (npx tsx scripts/writeJobSchema.ts writes it)', () => expect(published).toBe(jsonSchemaText()));

  it('says what it is', () =>
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      $id: 'bendwright-job.schema.json',
      title: 'Bendwright job, version 1',
    }));

  it('requires what the example has', () => {
    const fields = ['format', 'version', 'name', 'units', 'scale', 'step', 'sizes', 'stocks', 'parts', 'dxf'];
    expect(schema.required).toEqual(fields);
    expect(Object.keys(exampleJob)).toEqual(fields);
    expect(schema.additionalProperties).toBe(false);
  });

  it('passes the example, and only the example', () => {
    expect(faults(schema, exampleJob, '')).toEqual([]);
    const spoil = (change: (job: any) => void) => {
      const job = structuredClone(exampleJob);
      change(job);
      return faults(schema, job, '');
    };
    expect(spoil((job) => delete job.parts[0].legs[0].length)).toEqual(['/parts/0/legs/0/length is missing']);
    expect(spoil((job) => (job.units.denominator = 7))).toEqual(['/units/denominator fits none']);
    expect(spoil((job) => (job.colour = 'red'))).toEqual(['/colour is not known']);
    expect(spoil((job) => (job.stocks[0].id = 'a b'))).toEqual(['/stocks/0/id does not match']);
    expect(spoil((job) => (job.parts[1].legs[0].startShape = { kind: 'oval' }))).toHaveLength(1);
  });
});
