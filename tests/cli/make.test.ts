import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exampleJob } from '../../src/job/exampleJob';
import { writeField } from '../../src/job/fields';
import { saveJob } from '../../src/job/saveJob';
import type { Job } from '../../src/job/schema';
import { boundsOf, readFonts, readPaths, readSizes, readText } from '../export/pdf/poppler';

const root = resolve(import.meta.dirname, '../..');
const desk = mkdtempSync(join(tmpdir(), 'make-'));
afterAll(() => rmSync(desk, { recursive: true }));

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command as a maker does, through npm. */
const make = (...args: string[]): Promise<Ran> =>
  new Promise((done) => {
    execFile('npm', ['run', '--silent', 'make', '--', ...args], { cwd: root }, (failure, out, err) => done({ code: failure ? Number(failure.code) : 0, out, err }));
  });

function put(name: string, job: Job | string): string {
  const path = join(desk, name);
  writeFileSync(path, typeof job === 'string' ? job : saveJob(job));
  return path;
}

interface Report {
  readonly format: string;
  readonly version: number;
  readonly jobs: readonly {
    readonly file: string;
    readonly errors: readonly string[];
    readonly parts: readonly {
      readonly id: string;
      readonly errors: readonly string[];
      readonly files: Readonly<Record<'dxf' | 'svg' | 'template' | 'shopSheet', string>> | null;
      readonly geometry: {
        readonly developedLength: number;
        readonly blank: { readonly length: number; readonly width: number };
        readonly area: number;
        readonly mass: number;
        readonly bends: readonly { readonly number: number; readonly k: number; readonly allowance: number; readonly deduction: number; readonly outsideSetback: number; readonly centreLine: readonly (readonly number[])[] }[];
        readonly cutouts: readonly { readonly id: string; readonly item: number; readonly blank: readonly number[]; readonly folded: readonly number[] }[];
      } | null;
    }[];
  }[];
}
const reportIn = (out: string): Report => JSON.parse(readFileSync(join(out, 'report.json'), 'utf8')) as Report;

describe('the example job', () => {
  const out = join(desk, 'example');
  let ran: Ran;
  beforeAll(async () => {
    ran = await make(put('example.json', exampleJob), '--out', out);
  });
  it('goes through without a word', () => expect(ran).toEqual({ code: 0, out: '', err: '' }));
  it('writes a DXF, an SVG, a template and a shop sheet a part, named by part, stock and quantity', () => {
    const names = readdirSync(out);
    expect(names.filter((n) => n.endsWith('.dxf'))).toHaveLength(4);
    expect(names.filter((n) => n.endsWith('.svg'))).toHaveLength(4);
    expect(names).toContain('Front strap - Brass, half hard, 1.6 sheet - 12 off.dxf');
    expect(names).toContain('Front strap - Brass, half hard, 1.6 sheet - 12 off - template.pdf');
    expect(names).toContain('Front strap - Brass, half hard, 1.6 sheet - 12 off - shop sheet.pdf');
    expect(reportIn(out).jobs[0]?.parts.flatMap((p) => Object.values(p.files ?? {})).toSorted()).toEqual(names.filter((n) => n !== 'report.json').toSorted());
  });
  it('reports the strap as worked by hand', () => {
    const strap = reportIn(out).jobs[0]?.parts.find((p) => p.id === 'strap')?.geometry;
    // By hand, t 1.6, r 2, K 0.414: BA = θ (2 + 0.414 × 1.6): 2.0910 at 45°, 4.1821 at 90°; outside setbacks 3.6 tan 22.5° = 1.4912 and 3.6.
    expect(strap?.bends.map((b) => b.allowance)).toEqual([expect.closeTo(2.091, 3), expect.closeTo(2.091, 3), expect.closeTo(4.1821, 4)]);
    expect(strap?.bends.map((b) => b.outsideSetback)).toEqual([expect.closeTo(1.4912, 4), expect.closeTo(1.4912, 4), expect.closeTo(3.6, 9)]);
    expect(strap?.bends[2]?.deduction).toBeCloseTo(7.2 - 4.1821, 4);
    // Straights 24.509 + 15.680 + 106.909 + 10, allowances 2.091 + 2.091 + 4.182.
    expect(strap?.developedLength).toBeCloseTo(165.462, 3);
    expect(strap?.blank).toEqual({ length: expect.closeTo(165.462, 3), width: 16 });
    expect(strap?.cutouts.filter((c) => c.id !== 'foot').length).toBeGreaterThanOrEqual(7);
    const seventh = strap?.cutouts.find((c) => c.item === 7);
    expect(seventh?.blank[0]).toBeCloseTo(140.38, 2);
    // Bent, the peg leg lies level above the foot: by the crank's straight at 45°, and by the rise of the marked face round both bends, 2 and 2 + 1.6 mm in radius.
    const rise = 15.68 * Math.SQRT1_2 + (2 + 3.6) * (1 - Math.SQRT1_2);
    expect(seventh?.folded[2]).toBeCloseTo(rise, 2);
  });
});

describe('the papers', () => {
  const pdf = (out: string, kind: 'template' | 'shopSheet'): Uint8Array => new Uint8Array(readFileSync(join(out, reportIn(out).jobs[0]?.parts.find((p) => p.id === 'strap')?.files?.[kind] ?? '')));
  const made = async (name: string, ...more: string[]): Promise<string> => {
    const out = join(desk, name);
    expect(await make(put(`${name}.json`, exampleJob), '--out', out, ...more)).toEqual({ code: 0, out: '', err: '' });
    return out;
  };

  it('are on A4 and bear the day they were asked for, with the figures of the part', async () => {
    const out = await made('dated', '--date', '2026-11-05');
    for (const kind of ['template', 'shopSheet'] as const) {
      const [size] = readSizes(pdf(out, kind));
      expect(size?.toSorted((a, b) => a - b)).toEqual([expect.closeTo(210, 1), expect.closeTo(297, 1)]);
      expect(readText(pdf(out, kind))).toContain('5 November 2026');
      expect(readText(pdf(out, kind))).toContain('Front strap');
      expect(readFonts(pdf(out, kind)).every((font) => font.embedded)).toBe(true);
    }
    // The bend lines, worked out by hand above, as the bench needs them.
    for (const figure of ['25.55', '43.33', '153.37', '165.46']) expect(readText(pdf(out, 'shopSheet'))).toContain(figure);
    // The outline at full size: 165.46 mm long, 16 wide, on paper to a hundredth.
    const outline = readPaths(pdf(out, 'template'), 1).filter((p) => p.closed).map((p) => boundsOf(p.pieces)).toSorted((a, b) => b.maxY - b.minY - (a.maxY - a.minY))[0];
    expect([(outline?.maxX ?? 0) - (outline?.minX ?? 0), (outline?.maxY ?? 0) - (outline?.minY ?? 0)].toSorted((a, b) => a - b)).toEqual([expect.closeTo(16, 2), expect.closeTo(165.462, 2)]);
  });

  it('are the same bytes for the same job and day, on the paper asked for', async () => {
    const [one, two, other] = [await made('one', '--date=2026-11-05', '--paper=Legal'), await made('two', '--date', '2026-11-05', '--paper', 'legal'), await made('other', '--date', '2026-11-06', '--paper', 'Legal')];
    for (const kind of ['template', 'shopSheet'] as const) {
      expect(Buffer.from(pdf(one, kind)).equals(Buffer.from(pdf(two, kind)))).toBe(true);
      expect(Buffer.from(pdf(one, kind)).equals(Buffer.from(pdf(other, kind)))).toBe(false);
      expect(readSizes(pdf(one, kind))[0]?.toSorted((a, b) => a - b)).toEqual([expect.closeTo(215.9, 1), expect.closeTo(355.6, 1)]);
    }
  });
});

describe('when something is wrong', () => {
  it('writes the good parts, refuses the faulty one, says so on stderr and answers 1', async () => {
    const out = join(desk, 'faulty');
    const faulty = writeField(exampleJob, 'parts.strap.legs.lip.length', '1');
    const { code, err } = await make(put('faulty.json', faulty), '--out', out);
    expect(code).toBe(1);
    expect(err).toMatch(/faulty\.json, Front strap: Leg D .*too short for its bend by \d/);
    expect(readdirSync(out).filter((n) => n.endsWith('.dxf'))).toHaveLength(3);
    expect(readdirSync(out).filter((n) => n.endsWith('.pdf'))).toHaveLength(6);
    const strap = reportIn(out).jobs[0]?.parts.find((p) => p.id === 'strap');
    expect(strap).toMatchObject({ files: null, geometry: null, errors: [expect.stringContaining('too short')] });
  });
  it('takes several files, keeps their names apart, and goes on past one that cannot be read', async () => {
    const out = join(desk, 'several');
    const first = put('first.json', exampleJob);
    const { code, err } = await make(first, join(desk, 'missing.json'), put('second.json', exampleJob), '--out', out);
    expect(code).toBe(1);
    expect(err).toBe('missing.json: There is no such file.\n');
    expect(readdirSync(out).filter((n) => n.endsWith('.dxf'))).toHaveLength(8);
    expect(reportIn(out).jobs.map((j) => j.file)).toEqual(['first.json', 'missing.json', 'second.json']);
  });
  it('refuses a truncated file with plain sentences', async () => {
    const { code, err } = await make(put('cut.json', saveJob(exampleJob).slice(0, 2000)), '--out', join(desk, 'cut'));
    expect(code).toBe(1);
    expect(err).toMatch(/^cut\.json: /);
    expect(err).not.toMatch(/at .*\.ts:\d+/);
  });
  it.each([[['--out', 'x'], 'No job file'], [['job.json'], 'No folder'], [['--loud', 'job.json', '--out', 'x'], '"--loud" is not known'], [['job.json', '--out', 'x', '--paper', 'B5'], '"B5" is no paper known here. Take A4, A3, Letter or Legal.'], [['job.json', '--out', 'x', '--paper'], '"" is no paper'], [['job.json', '--out', 'x', '--date', '2026-02-30'], '"2026-02-30" is not a day. Give it as year, month and day']] as const)('explains its use for %j', async (args, says) => {
    const { code, err } = await make(...args);
    expect(code).toBe(1);
    expect(err).toContain(says);
  });
});
