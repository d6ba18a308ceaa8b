import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { openJob } from '../../src/job/openJob';
import { saveJob } from '../../src/job/saveJob';
import { LONGEST_FILE } from '../../src/job/limits';
import { MOST_FAULTS } from '../../src/job/schemaFaults';
import { VERSION } from '../../src/job/schema';
import { MIGRATIONS } from '../../src/job/versions/migrate';

const text = saveJob(exampleJob);
// A copy that may be spoilt in any way.
const copy = (): any => JSON.parse(text);
const faultsOf = (source: string) => {
  const opened = openJob(source);
  return opened.ok ? [] : opened.faults;
};
const spoilt = (spoil: (job: any) => void) => {
  const job = copy();
  spoil(job);
  return faultsOf(JSON.stringify(job));
};
const onlyFault = (faults: ReturnType<typeof faultsOf>): string => {
  expect(faults).toHaveLength(1);
  return `${faults[0]?.where}: ${faults[0]?.says}`;
};

describe('a job that was saved', () => {
  it('opens as it was', () => {
    const opened = openJob(text);
    expect(opened).toEqual({ ok: true, job: exampleJob, notes: [] });
  });

  it('comes back in the order of the schema, whatever the order in the file', () => {
    const backwards = (value: any): any =>
      Array.isArray(value)
        ? value.map(backwards)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(Object.entries(value).toReversed().map(([key, inner]) => [key, backwards(inner)]))
          : value;
    const muddled = saveJob(backwards(exampleJob));
    expect(muddled.startsWith('{\n  "dxf": {')).toBe(true);
    const opened = openJob(muddled);
    expect(opened.ok && saveJob(opened.job)).toBe(text);
    expect(text.startsWith('{\n  "format": "bendwright job",\n  "version": 1,\n')).toBe(true);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it('is saved even where an entry is longer than the schema lets through, so that nothing is lost', () => {
    const long = { ...exampleJob, scale: '1'.repeat(201) };
    expect(JSON.parse(saveJob(long)).scale).toBe(long.scale);
    expect(onlyFault(faultsOf(saveJob(long)))).toBe('scale (scale): is 201 characters long; 200 is the most.');
  });

  it('opens with a byte order mark before it', () => expect(openJob(`\uFEFF${text}`).ok).toBe(true));
});

describe('every job in saved/', () => {
  const folder = new URL('saved/', import.meta.url);
  const names = readdirSync(folder);

  it('is of a version named in the file name, and every version from which we migrate has one', () => {
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) {
      const version = JSON.parse(readFileSync(new URL(name, folder), 'utf8')).version;
      expect(name.startsWith(`v${version}-`), name).toBe(true);
    }
    for (const version of [...MIGRATIONS.map(({ from }) => from), VERSION]) {
      expect(names.some((name) => name.startsWith(`v${version}-`)), `a saved job of version ${version}`).toBe(true);
    }
  });

  it.each(names)('%s opens', (name) => {
    const opened = openJob(readFileSync(new URL(name, folder), 'utf8'));
    expect(opened.ok ? [] : opened.faults).toEqual([]);
  });
});

describe('a text that is no JSON', () => {
  const says = (source: string) => onlyFault(faultsOf(source));

  it('is said to be cut short, with the line, wherever it is cut', () => {
    const lines = text.split('\n').length;
    for (let end = 1; end < text.length - 2; end += 7) {
      const sentence = says(text.slice(0, end));
      expect(sentence, text.slice(0, end).slice(-30)).toMatch(/^the file: The file stops in the middle, on line \d+\. It was cut short/);
      expect(Number(/line (\d+)/.exec(sentence)?.[1])).toBe(text.slice(0, end).split('\n').length);
    }
    expect(lines).toBeGreaterThan(300);
  });

  it.each([
    ['{"format": "bendwright job" "version": 1}', 'Line 1, place 29: A comma or a } belongs here.'],
    ['{"a": 1,\n  b: 2}', 'Line 2, place 3: The name of a field, in " marks, belongs here.'],
    ['{"a": 1,}', 'Line 1, place 9: The name of a field, in " marks, belongs here.'],
    ['{"a" 1}', 'Line 1, place 6: A colon belongs here.'],
    ['[1,]', 'Line 1, place 4: A value belongs here.'],
    ['[1 2]', 'Line 1, place 4: A comma or a ] belongs here.'],
    ['{"a": 01}', 'Line 1, place 7: A value belongs here.'],
    ['{"a": nope}', 'Line 1, place 7: A value belongs here.'],
    ['{"a": "x\ny"}', 'Line 1, place 9: A closing " or another character belongs here.'],
    ['{"a": "\\q"}', 'Line 1, place 8: A closing " or another character belongs here.'],
    ['{} {}', 'Line 1, place 4: the job ended before this. Nothing belongs after it.'],
    ['hello', 'Line 1, place 1: A value belongs here.'],
    ['[tru', 'The file stops in the middle, on line 1.'],
    ['[-1.', 'The file stops in the middle, on line 1.'],
    ['<html>', 'Line 1, place 1: A value belongs here.'],
  ])('%s', (source, sentence) => expect(says(source)).toContain(sentence));

  it('agrees with JSON.parse on what is JSON', () => {
    const alphabet = ['{', '}', '[', ']', '"', ':', ',', '1', '-', '.', 'e', 'true', 'null', ' ', '\n', '\\', 'u00e9', 'a', '"a"', '\u0001', 'é', '\u2028'];
    let seed = 5;
    const next = (below: number) => (seed = (seed * 48271) % 2147483647) % below;
    let good = 0;
    for (let i = 0; i < 20_000; i += 1) {
      const source = Array.from({ length: 1 + next(8) }, () => alphabet[next(alphabet.length)]).join('');
      if (source.trim() === '') continue;
      let parses = true;
      try {
        JSON.parse(source);
      } catch {
        parses = false;
      }
      const sentence = `${faultsOf(source)[0]?.says}`;
      expect(sentence.startsWith('This is not a Bendwright job'), source).toBe(parses);
      if (parses) good += 1;
    }
    expect(good).toBeGreaterThan(200);
  });

  it('is empty', () => {
    expect(says('')).toContain('The file is empty');
    expect(says(' \n ')).toContain('The file is empty');
  });

  it('is too long or too deep: one sentence, without running out of stack', () => {
    expect(says(' '.repeat(LONGEST_FILE + 1))).toContain('The file is 21 MB; a job file is at most 20 MB.');
    expect(says('['.repeat(LONGEST_FILE))).toContain('nested more than 64 deep');
    expect(says('{"a":'.repeat(LONGEST_FILE / 5))).toContain('nested more than 64 deep');
    expect(says(`{"a":"${'x'.repeat(LONGEST_FILE / 2)}`)).toContain('It was cut short');
  });
});

describe('what is JSON but no job', () => {
  it.each(['[]', 'null', '3', '"x"', '{}'])('%s', (source) => expect(onlyFault(faultsOf(source))).toContain('This is not a Bendwright job.'));

  it('says what the file calls itself', () =>
    expect(onlyFault(faultsOf('{"format": "shopping list"}'))).toContain('It calls itself "shopping list".'));

  it('is of a newer version', () =>
    expect(onlyFault(spoilt((job) => (job.version = 7)))).toBe(
      'version: This job was made by a newer Bendwright (version 7; this one reads up to 1). Open it with that one; nothing has been changed.',
    ));

  it('is of an older version with no way up', () =>
    expect(onlyFault(spoilt((job) => (job.version = 0)))).toContain('There is no way from version 0 of the job to version 1.'));

  it.each([undefined, '1', 1.5, -1, null])('has %s for its version', (version) =>
    expect(onlyFault(spoilt((job) => (job.version = version)))).toBe('version: the version of the job should be a whole number, 1 for this Bendwright.'));
});

describe('what does not fit the schema is said in plain words', () => {
  it.each<[string, (job: any) => void, string]>([
    [
      'a word that is not known',
      (job) => (job.parts[1].legs[0].startBasis = 'outer'),
      'parts.1.legs.0.startBasis (part 2 "Front strap", leg A "Foot", start basis): "outer" is not known here; it should be one of outside, inside, centre line, straight.',
    ],
    [
      'a kind that is not known',
      (job) => (job.parts[1].legs[0].cutouts[0].shape.kind = 'oval'),
      'parts.1.legs.0.cutouts.0.shape.kind (part 2 "Front strap", leg A "Foot", cut-out 1 "Foot hole", shape, kind): "oval" is not known here; it should be one of round, slot, rectangle.',
    ],
    ['a figure that is not known', (job) => (job.units.denominator = 7), '7 is not known here; it should be one of 8, 16, 32, 64, 128.'],
    [
      'a number for an entry',
      (job) => (job.parts[0].quantity = 12),
      'parts.0.quantity (part 1 "Back plate", quantity): 12 does not fit here; it should be text in " marks, "12".',
    ],
    ['a field left out', (job) => delete job.stocks[0].density, 'stocks.0.density (stock 1 "Brass, half hard, 1.6 sheet", density): is missing; it should be text in " marks.'],
    ['a list for a group', (job) => (job.dxf = []), 'dxf (dxf): a list does not fit here; it should be a group of fields in { }.'],
    ['a group for a list', (job) => (job.sizes = {}), 'sizes (sizes): a group of fields does not fit here; it should be a list in [ ].'],
    ['an empty list', (job) => (job.stocks = []), 'stocks (stocks): is empty; it needs at least 1.'],
    ['a bad id', (job) => (job.sizes[0].id = 'a b'), '"a b" will not do as an id; it should be 1 to 40 letters A to Z, figures, hyphens or underscores.'],
    ['a field too many', (job) => (job.units.colour = 'red'), 'units (units): there is no field called "colour" here; leave it out.'],
    ['fields too many', (job) => Object.assign(job, { x: 1, y: 2 }), 'the job: there are no fields called "x", "y" here; leave them out.'],
  ])('%s', (_, spoil, sentence) => expect(onlyFault(spoilt(spoil))).toContain(sentence));

  it('shows a long or multi-line value cut short and on one line', () => {
    const sentence = onlyFault(spoilt((job) => (job.units.plain = `mm\n${'z'.repeat(9000)}`)));
    expect(sentence.length).toBeLessThan(160);
    expect(sentence).not.toContain('\n');
  });

  it('counts the rest of many faults', () => {
    const faults = spoilt((job) => (job.sizes = Array.from({ length: MOST_FAULTS + 214 }, () => ({ id: 'a', name: 'a', text: 1, note: '' }))));
    expect(faults).toHaveLength(MOST_FAULTS + 1);
    expect(faults.at(-1)?.says).toBe('and 214 more.');
  });

  it.each(['__proto__', 'constructor', 'prototype', 'toString'])('takes %s for a field like any other', (key) => {
    for (const place of ['{', '"units": {', '"legs": [\n        {']) {
      const source = text.replace(place, `${place} "${key}": {"polluted": true},`);
      expect(source).not.toBe(text);
      expect(onlyFault(faultsOf(source))).toContain(`there is no field called "${key}" here`);
    }
    expect(({} as any).polluted).toBeUndefined();
  });

  it('never throws, whatever stands in a field', () => {
    const values = [null, 0, -1, 1e308, '', 'x', [], {}, [[]], true, { kind: 'round' }, { __proto__: null }];
    const paths: string[][] = [];
    const walk = (node: any, path: string[]): void => {
      for (const key of Object.keys(node)) {
        paths.push([...path, key]);
        if (typeof node[key] === 'object') walk(node[key], [...path, key]);
      }
    };
    walk(copy(), []);
    expect(paths.length).toBeGreaterThan(300);
    paths.forEach((path, i) => {
      const job = copy();
      const holder = path.slice(0, -1).reduce((node: any, key) => node[key], job);
      holder[path.at(-1) as string] = values[i % values.length];
      for (const fault of faultsOf(JSON.stringify(job))) {
        expect(fault.says.trim()).not.toBe('');
        expect(`${fault.where} ${fault.says}`).not.toMatch(/undefined|NaN|\[object|invalid|error|please|!/i);
      }
    });
  });
});
