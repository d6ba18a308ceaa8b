import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourBounds, NOTHING, joined, pathBounds } from '../../../src/core/geometry/bounds';
import type { Part } from '../../../src/core/part/types';
import { formatLength } from '../../../src/core/units/formatLength';
import type { Page } from '../../../src/drawing/page';
import { shopSheetPages } from '../../../src/drawing/sheet/shopSheet';
import { holeLines } from '../../../src/drawing/sheet/holeLines';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { plainBend, plainLeg, roundHole } from '../../../src/job/pieces';
import type { Job } from '../../../src/job/schema';
import { holeRows } from '../../../src/job/tables/holeRows';
import { bend, hole, leg, partWithLugs, STRAP, workablePart } from '../sampleParts';
import { cell, collisions, onLines, outside, said, settings, subject, subjectOf, texts } from './sheets';

const RATIOS = [5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100, 1 / 200];

const scaleOf = (page: Page): number => {
  const at = said(page).indexOf('Drawn to scale');
  const [over, under] = (said(page)[at + 1] ?? '').split(':').map(Number);
  return (over ?? NaN) / (under ?? NaN);
};

const figure = (page: Page, key: string) => page.entities.find((e) => e.key === key);

describe('random parts', () => {
  it.each(['A4 lying', 'A4 upright', 'A3 lying', 'Letter lying', 'Letter upright'])('keep to the printable area of %s and lay no text on another or on a ruled line', (name) => {
    const [paper, turn] = name.split(' ') as ['A4', 'lying'];
    let sheets = 0;
    fc.assert(
      fc.property(fc.oneof(workablePart, partWithLugs), (part) => {
        const own = subjectOf(part);
        if (!own) return;
        const pages = shopSheetPages(own, settings({ paper, turn }));
        for (const page of pages) {
          sheets += 1;
          expect(outside(page, settings({ paper, turn }))).toEqual([]);
          expect(collisions(page)).toEqual([]);
          expect(new Set(page.entities.map(({ key }) => key)).size).toBe(page.entities.length);
        }
      }),
      { numRuns: 12 },
    );
    expect(sheets).toBeGreaterThan(8);
  });

  it('draws the blank true to the scale that the title block names, one of the standard series', () => {
    let measured = 0;
    fc.assert(
      fc.property(workablePart, (part) => {
        const own = subjectOf(part);
        if (!own?.worked.shape) return;
        for (const page of shopSheetPages(own, settings())) {
          const outline = figure(page, 'blank outline');
          if (outline?.kind !== 'path') continue;
          const b = outline.runs.reduce((all, run) => joined(all, pathBounds(run.segments)), NOTHING);
          const ratio = scaleOf(page);
          expect(RATIOS).toContain(ratio);
          const { bounds } = own.worked.shape.blank;
          expect(b.maxX - b.minX).toBeCloseTo(bounds.maxX * ratio, 6);
          expect(b.maxY - b.minY).toBeCloseTo(bounds.maxY * ratio, 6);
          measured += 1;
        }
      }),
      { numRuns: 15 },
    );
    expect(measured).toBeGreaterThan(10);
  });

  it('tells every bend and every hole, whatever the number of sheets', () => {
    fc.assert(
      fc.property(workablePart, (part) => {
        const own = subjectOf(part);
        if (!own?.worked.shape) return;
        const { blank } = own.worked.shape;
        const pages = shopSheetPages(own, settings());
        const rings = pages.flatMap(texts).filter(({ key }) => /^bends \d+ 0 number$/.test(key)).map(({ text }) => Number(text));
        expect(rings).toEqual(blank.bends.map((b) => b.leg));
        blank.bends.forEach((b, i) => {
          expect(cell(pages, 'bends', i, 1)).toBe(((b.centreLine[0].x + b.centreLine[1].x) / 2 - (blank.legs[0]?.x ?? 0)).toFixed(2));
          expect(cell(pages, 'bends', i, 7)).toBe(b.figures.k.toFixed(3));
          expect(cell(pages, 'bends', i, 8)).toBe(b.figures.allowance.toFixed(3));
          expect(cell(pages, 'bends', i, 9)).toBe(formatLength(b.figures.deduction, { show: 'mm', places: 3 }));
        });
        const sketches = pages.flatMap(texts).filter(({ key }) => /^sketch \d+ words$/.test(key));
        expect(sketches).toHaveLength(blank.bends.length);
        for (const { id, cutouts } of part.legs) {
          for (const cutout of cutouts) {
            const known = blank.cutouts.filter((c) => part.legs[c.leg]?.id === id && part.legs[c.leg]?.cutouts[c.cutout]?.id === cutout.id).length;
            if (known > 0) expect(pages.flatMap(said).some((t) => t.startsWith(cutout.name))).toBe(true);
          }
        }
      }),
      { numRuns: 15 },
    );
  });
});

describe('the strap of the example', () => {
  const pages = shopSheetPages(subject('strap'), settings());
  const [page] = pages;
  const all = pages.flatMap(said);

  it('fits one sheet at full size', () => {
    expect(pages).toHaveLength(1);
    expect(page && scaleOf(page)).toBe(1);
    expect(page).toMatchObject({ width: 297, height: 210 });
  });

  it('names part, job, number off, stock, thickness, units, date and sheet', () => {
    for (const wanted of ['Front strap', 'Roof-vent peg stay', '12', 'Brass, half hard, 1.6 sheet', '1.60 mm', 'mm', '5 November 2026', '1 of 1', 'Part 2 of 4']) expect(all).toContain(wanted);
  });

  it('gives the bends as the guide of the screens prints them', () => {
    // light.png and guide.md: lines at 25.55, 43.33, 153.37; BA 2.091 at 45°, 4.182 at 90°; K 0.414.
    expect([0, 1, 2].map((row) => cell(pages, 'bends', row, 1))).toEqual(['25.55', '43.33', '153.37']);
    expect([0, 1, 2].map((row) => cell(pages, 'bends', row, 2))).toEqual(['24.51 – 26.60', '42.28 – 44.37', '151.28 – 155.46']);
    expect([0, 1, 2].map((row) => cell(pages, 'bends', row, 5))).toEqual(['135°', '135°', '90°']);
    expect([0, 1, 2].map((row) => cell(pages, 'bends', row, 8))).toEqual(['2.091', '2.091', '4.182']);
  });

  it('puts the row of peg holes in one line of the table, with where it stands in the finished part', () => {
    expect(cell(pages, 'holes', 1, 0)).toBe('Peg hole, 7 off');
    expect(cell(pages, 'holes', 1, 3)).toBe('50.38 + 6 × 15 = 140.38');
    // 37.565 from the foot hole at 8 (its named size `footToPeg`); 12.73 above the foot (light.png).
    expect(cell(pages, 'holes', 1, 5)).toBe('45.57 to 135.57');
    expect(cell(pages, 'holes', 1, 7)).toBe('12.73');
  });

  it('says what the allowance stands on, what to look at and what to take care of', () => {
    const whole = all.join(' ');
    expect(whole).toContain('One K for every bend, as typed; no test strip of your own yet.');
    expect(whole).toContain('Peg hole 1 starts 4.41 mm from bend 2.');
    expect(whole).toContain('Not for lifting or holding people; structural and pressure work is out of scope.');
    expect(whole).toContain('Local rules and licensed practice come first.');
  });

  it('cannot be picked at and shows no readings that are for the screen only', () => {
    expect(page?.entities.filter((e) => e.pick !== undefined || e.field !== undefined)).toEqual([]);
    expect(page?.entities.filter((e) => e.role === 'tangent text')).toEqual([]);
  });

  it('follows the order of bending that is given', () => {
    const other = shopSheetPages({ ...subject('strap'), order: [3, 1] }, settings());
    expect([0, 1, 2].map((row) => cell(other, 'bends', row, 1))).toEqual(['153.37', '25.55', '43.33']);
    expect(other.flatMap(texts).filter(({ key }) => /^sketch \d+ words$/.test(key)).map(({ text }) => text)).toEqual(['90° up', '45° up', '45° down']);
  });
});

describe('the parts of the example', () => {
  it.each(['back-plate', 'strap', 'bracket', 'lever'])('%s: no figure or word lies on a line', (id) => {
    for (const page of shopSheetPages(subject(id), settings())) {
      expect([...outside(page, settings()), ...collisions(page)]).toEqual([]);
      expect(onLines(page)).toEqual([]);
    }
  });
});

describe('the sketches after each bend', () => {
  it('show only the bends that have been made: the strip stays flat beyond them', () => {
    const [page] = shopSheetPages(subject('strap'), settings());
    const height = (index: number): number => {
      const metal = page && figure(page, `sketch ${index} metal`);
      const b = metal?.kind === 'path' ? metal.runs.reduce((all, run) => joined(all, pathBounds(run.segments)), NOTHING) : NOTHING;
      return (b.maxY - b.minY) / (b.maxX - b.minX);
    };
    // After bend 1 all beyond it stands at 45°; after bend 2 it lies level again; bend 3 turns up the lip.
    expect(height(0)).toBeGreaterThan(0.5);
    expect(height(1)).toBeLessThan(0.15);
    expect(height(2)).toBeGreaterThan(height(1) * 1.2);
  });
});

describe('a part in error', () => {
  const inError = (field: string, entry: string) => shopSheetPages(subject('strap', writeField(exampleJob, field, entry)), settings());

  it('gets a sheet that says so in large letters, with the sentences and no shape', () => {
    const [page, ...more] = inError('parts.strap.legs.lip.length', '1');
    expect(more).toEqual([]);
    if (!page) throw new Error('no sheet');
    expect(texts(page).find(({ text }) => text === 'Not for the bench')?.role).toBe('sheet warning');
    expect(said(page).join(' ')).toContain('Leg D (Lip) is too short for its bend by 1.00 mm.');
    expect(page.entities.filter((e) => ['outline', 'hole', 'dimension text', 'running text', 'running total', 'sketch'].includes(e.role))).toEqual([]);
    expect(said(page)).not.toContain('165.46');
    expect(said(page)).not.toContain('1.60 mm');
  });

  it('is not printed as if right where only its number or a check stands in the way', () => {
    const [number] = inError('parts.strap.quantity', '0');
    expect(number && said(number)).toContain('Not for the bench');
    const through = Object.entries({ 'crank.bend.angle': '90', 'peg-leg.bend.angle': '150', 'peg-leg.bend.way': 'up' }).reduce((job, [field, entry]) => writeField(job, `parts.strap.legs.${field}`, entry), exampleJob);
    const own = subject('strap', through);
    expect(own.worked.findings.some(({ level }) => level === 'stop')).toBe(true);
    const [page] = shopSheetPages(own, settings());
    expect(page && said(page)).toContain('Not for the bench');
    expect(page && figure(page, 'blank outline')).toBeUndefined();
  });

  it('keeps to the sheet however many sentences there are', () => {
    const bad = ['foot', 'crank', 'peg-leg', 'lip'].reduce((job, id) => ['length', 'startWidth', 'endWidth'].reduce((j, f) => writeField(j, `parts.strap.legs.${id}.${f}`, `no such size ${'x'.repeat(80)}`), job), exampleJob);
    const pages = shopSheetPages(subject('strap', bad), settings());
    for (const page of pages) {
      expect(outside(page, settings())).toEqual([]);
      expect(collisions(page)).toEqual([]);
    }
  });
});

describe('names', () => {
  const named = (name: string) => {
    const job = writeField(writeField(writeField(exampleJob, 'parts.strap.name', name), 'name', name), 'parts.strap.legs.foot.cutouts.rivet.name', name);
    return shopSheetPages(subject('strap', job), settings());
  };

  it.each(['Łódź, ½ × 45° ±', 'Στήριγμα φεγγίτη', 'Кронштейн форточки', '<b>&amp;"\'</b>', '=SUM(A1)'])('prints %s as it is', (name) => {
    const whole = named(name).flatMap(said);
    expect(whole.filter((t) => t === name).length).toBeGreaterThanOrEqual(2);
  });

  it('takes out what cannot be printed, and never prints nothing', () => {
    expect(named('Strap\n\u202Eleft\u0000\u200B').flatMap(said)).toContain('Strap left');
    expect(named('\n').flatMap(said)).toContain('Part without a name');
  });

  it('breaks long names on to two lines and cuts the rest with dots, on no other text', () => {
    for (const name of ['long '.repeat(24), 'W'.repeat(120), 'Ж'.repeat(120)]) {
      for (const page of named(name)) {
        expect(outside(page, settings())).toEqual([]);
        expect(collisions(page)).toEqual([]);
        expect(said(page).some((t) => t.endsWith('…'))).toBe(true);
      }
    }
  });
});

describe('crowded parts', () => {
  const crowded: Part = {
    thickness: 1.5,
    rule: { kind: 'din6935' },
    legs: [
      leg('a', 150, 'outside', 60, { cutouts: Array.from({ length: 45 }, (_, i) => hole(`odd hole ${i}`, 2, 'start', 5 + 3.1 * i, { kind: 'single' }, { from: 'centre', distance: ((i * 7) % 40) - 20 })) }),
      leg('b', 40, 'outside', 60, { bend: bend(0, 90, 'up') }),
    ],
  };
  const own = subjectOf(crowded);
  const pages = own ? shopSheetPages(own, settings()) : [];

  it('go on to further sheets, with every hole in the table at its place', () => {
    expect(pages.length).toBeGreaterThan(1);
    expect(own?.worked.shape?.blank.cutouts).toHaveLength(45);
    own?.worked.shape?.blank.cutouts.forEach((c, i) => {
      expect(cell(pages, 'holes', i, 0)).toBe(`odd hole ${i}`);
      expect(cell(pages, 'holes', i, 3)).toBe(c.centre.x.toFixed(2));
      expect(cell(pages, 'holes', i, 4)).toBe(c.centre.y.toFixed(2));
    });
    expect(pages.flatMap(said).filter((t) => /^\d of \d$/.test(t))).toEqual(pages.map((_, i) => `${i + 1} of ${pages.length}`));
  });

  it('are still drawn, say where the holes are to be found, and lie on nothing', () => {
    expect(pages.flatMap(said).join(' ')).toContain('work from the table of holes');
    expect(pages.some((page) => figure(page, 'blank outline'))).toBe(true);
    for (const page of pages) expect([...outside(page, settings()), ...collisions(page)]).toEqual([]);
    const drawn = pages.flatMap((page) => page.entities).find((e) => e.key === 'blank a odd hole 7');
    expect(drawn?.kind === 'contours' && drawn.contours.map(contourBounds)).toHaveLength(1);
  });
});

describe('other units', () => {
  it('writes decimal inches and fractions, allowances always in decimals', () => {
    const inches = shopSheetPages(subject('bracket', writeField(exampleJob, 'units.show', 'inch')), settings());
    expect(cell(inches, 'holes', 0, 3)).toBe('0.313');
    const fractions = shopSheetPages(subject('bracket', writeField(exampleJob, 'units.show', 'fraction')), settings());
    expect(cell(fractions, 'holes', 0, 3)).toBe('5/16');
    expect(cell(fractions, 'bends', 0, 8)).toMatch(/^0\.\d{3}$/);
    expect(fractions.flatMap(said)).toContain('inches and fractions');
    for (const page of [...inches, ...fractions]) expect([...outside(page, settings()), ...collisions(page)]).toEqual([]);
  });
});

describe('long figures', () => {
  it('are never cut: rows and grids in fractions on every paper', () => {
    const grid = (id: string, along: string): Job['parts'][number]['legs'][number]['cutouts'][number] =>
      roundHole(id, 'Drain of the long gutter', '3/16in', along, { pattern: { kind: 'grid', alongCount: '13', alongPitch: '12.3', acrossCount: '3', acrossPitch: '111.7' } });
    const job: Job = {
      ...writeField(writeField(exampleJob, 'units.show', 'fraction'), 'units.denominator', 128),
      parts: [{ id: 'p', name: 'Gutter', stock: 'brass', quantity: '1', legs: [plainLeg('a', 'A', '633.3', '461.1', { cutouts: [grid('g', '19.7')] }), plainLeg('b', 'B', '333.3', '461.1', { bend: plainBend('a', '37'), cutouts: [grid('g', '23.9')] })] }],
    };
    const own = subject('p', job);
    if (!own.worked.shape) throw new Error('not laid out');
    for (const on of [settings(), settings({ turn: 'upright' }), settings({ paper: 'Letter', turn: 'upright' })]) {
      const pages = shopSheetPages(own, on);
      for (const page of pages) expect([...outside(page, on), ...collisions(page)]).toEqual([]);
      holeLines(holeRows(own.worked.shape), own.words).forEach((line, i) => {
        const wanted = [line.size, line.along, line.across, line.x, line.y, line.z].map((t) => t.replaceAll('\u00A0', ' '));
        expect(wanted[1]).toMatch(/ \+ 12 × .* = /);
        expect([2, 3, 4, 5, 6, 7].map((column) => cell(pages, 'holes', i, column))).toEqual(wanted);
      });
    }
  });
});

it('lays the flat strap of the tests out without bends', () => {
  const flat = subjectOf({ ...STRAP, legs: STRAP.legs.slice(0, 1) });
  const pages = flat ? shopSheetPages(flat, settings()) : [];
  expect(pages.flatMap(said)).toContain('This part has no bends; the blank is the part.');
  expect(pages.flatMap(said)).not.toContain('Bending');
});
