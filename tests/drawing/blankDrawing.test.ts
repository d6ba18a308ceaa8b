import { describe, expect, it } from 'vitest';
import type { Part } from '../../src/core/part/types';
import type { Drawing, TextEntity } from '../../src/drawing/entities';
import { runningBand } from '../../src/drawing/runningBand';
import { bend, degrees, hole, leg, mustDraw, STRAP, wordsFor } from './sampleParts';

const texts = (drawing: Drawing, role: TextEntity['role']): readonly TextEntity[] => drawing.entities.filter((e) => e.kind === 'text').filter((t) => t.role === role);
const said = (drawing: Drawing, role: TextEntity['role']): readonly string[] => texts(drawing, role).map((t) => t.text);

describe('the blank of the strap in the visual guide', () => {
  // Printed in the picture of the main screen (light.png) and in guide.md: blank 165.462, holes, bends and tangent readings.
  const { blank } = mustDraw(STRAP);

  it('has the running dimensions printed there', () => {
    expect(said(blank, 'running text')).toEqual(['8.00', '50.38', '65.38', '80.38', '95.38', '110.38', '125.38', '140.38']);
    expect(said(blank, 'running total')).toEqual(['0', '165.46', '25.55', '43.33', '153.37']);
    expect(said(blank, 'tangent text')).toEqual(expect.arrayContaining(['24.51', '26.60', '42.28', '44.37', '151.28', '155.46']));
    expect(said(blank, 'tangent text')).toHaveLength(6);
    expect(said(blank, 'dimension text')).toEqual(['16.00']);
    expect(Math.abs(blank.extent.maxX - 165.462)).toBeLessThan(0.0005);
  });

  it('puts each reading under its hole, since there is room', () => {
    const pegs = blank.entities.find((e) => e.key === 'peg pegs');
    const centres = pegs?.kind === 'contours' ? pegs.contours.map((c) => (c.kind === 'circle' ? c.centre.x : NaN)) : [];
    expect(centres).toHaveLength(7);
    const at = texts(blank, 'running text').slice(1).map((t) => t.at.x);
    at.forEach((x, i) => expect(x).toBeCloseTo(centres[i] ?? NaN, 9));
  });

  it('names bends by ringed numbers with way and angle, which can be edited', () => {
    expect(said(blank, 'bend number')).toEqual(['1', '2', '3']);
    expect(texts(blank, 'bend text').map((t) => [t.text, t.field])).toEqual([
      ['45° up', 'parts.test.legs.crank.bend.angle'],
      ['45° down', 'parts.test.legs.peg.bend.angle'],
      ['90° up', 'parts.test.legs.lip.bend.angle'],
    ]);
  });

  it('runs bend centre lines 6 px past both edges', () => {
    const { blank: b, px } = mustDraw(STRAP);
    const drawnLine = b.entities.find((e) => e.key === 'crank bend centre line');
    const s = drawnLine?.kind === 'path' ? drawnLine.runs[0]?.segments[0] : undefined;
    expect(Math.min(s?.from.y ?? NaN, s?.to.y ?? NaN)).toBeCloseTo(-6 * px, 9);
    expect(Math.max(s?.from.y ?? NaN, s?.to.y ?? NaN)).toBeCloseTo(16 + 6 * px, 9);
  });
});

describe('crowded readings', () => {
  const strip = (pitch: number, count: number): Part => ({
    thickness: 1,
    rule: { kind: 'fixedK', k: 0.4 },
    legs: [leg('a', 200, 'outside', 20, { cutouts: [hole('row', 2, 'start', 10, { kind: 'row', direction: 'along', count, pitch })] })],
  });

  it('are cranked where a little room is wanting', () => {
    const { blank } = mustDraw(strip(11, 4), 850);
    expect(said(blank, 'running text')).toEqual(['10.00', '21.00', '32.00', '43.00']);
    const leaders = blank.entities.find((e) => e.key === 'a row reading leaders');
    const cranked = leaders?.kind === 'path' ? leaders.runs.filter((run) => run.segments.length === 2) : [];
    expect(cranked.length).toBeGreaterThan(0);
  });

  it('give way to gaps × pitch = total where a row is too close', () => {
    const { blank } = mustDraw(strip(4, 40), 850);
    expect(said(blank, 'running text')).toEqual(['10.00', '39 × 4 = 156', '166.00']);
    expect(texts(blank, 'running text')[1]?.field).toBe('parts.test.legs.a.cutouts.row.pattern.pitch');
  });

  it('are said in one figure where even that has no room', () => {
    const { blank } = mustDraw(strip(3, 12), 850);
    expect(said(blank, 'running text')).toEqual(['10.00 + 11 × 3 = 43.00']);
  });
});

describe('side lugs on the blank', () => {
  const part: Part = {
    thickness: 1.6,
    rule: { kind: 'fixedK', k: 0.414 },
    legs: [
      leg('base', 90, 'outside', 40),
      leg('lug', 18, 'outside', 30, {
        bend: { parent: 0, edge: 'left', turn: degrees(90), way: 'up', radius: 2, seat: { along: { from: 'middle', basis: 'outside', distance: 0 }, basis: 'outside', relief: { kind: 'square', width: 2, depth: 3 } } },
        cutouts: [hole('eye', 4, 'end', 6)],
      }),
      leg('up', 30, 'outside', 40, { bend: bend(0, 90, 'up') }),
    ],
  };

  it('have their bend read as a height at the side, and a balloon beside the bend', () => {
    const { blank } = mustDraw(part);
    const lug = blank.entities.find((e) => e.key === 'lug bend centre line');
    const s = lug?.kind === 'path' ? lug.runs[0]?.segments[0] : undefined;
    expect(s?.from.y).toBeCloseTo(s?.to.y ?? NaN, 9);
    const reading = texts(blank, 'running text').find((t) => t.key.startsWith('lug bend height'));
    expect(reading?.text).toBe((s?.from.y ?? NaN).toFixed(2));
    expect(reading?.at.x).toBeLessThan(blank.extent.minX);
    expect(texts(blank, 'bend text').map((t) => t.text)).toEqual(['90° up', '90° up']);
  });

  it('have their holes read both ways', () => {
    const { blank } = mustDraw(part);
    const eye = blank.entities.find((e) => e.key === 'lug eye');
    const circle = eye?.kind === 'contours' ? eye.contours[0] : undefined;
    const centre = circle?.kind === 'circle' ? circle.centre : { x: NaN, y: NaN };
    expect(said(blank, 'running text')).toEqual(expect.arrayContaining([centre.x.toFixed(2), centre.y.toFixed(2)]));
  });
});

describe('a band of readings', () => {
  const readings = [{ key: 'holes', readings: [{ at: 10, from: -5 }, { at: 30, from: -5 }] }];
  const begins = (out: number): readonly unknown[] =>
    runningBand(readings, 'below', wordsFor(STRAP), 0.2)(0, out).entities.flatMap((e) => (e.kind === 'path' ? e.runs.map((run) => run.segments[0]?.from) : []));

  it('begins its leaders at the openings, however far out it is moved', () => {
    expect(begins(0)).toEqual([{ x: 10, y: 5 }, { x: 30, y: 5 }]);
    expect(begins(20)).toEqual(begins(0));
  });

  it('tells a place once, whichever cut-out has it first', () => {
    const pair = (across: number, id: string) => hole(id, 3, 'start', 20.123, { kind: 'single' }, { from: 'centre', distance: across });
    const plate = mustDraw({ thickness: 1, rule: { kind: 'fixedK', k: 0.42 }, legs: [leg('plate', 60, 'outside', 30, { cutouts: [pair(-8, 'low'), pair(8, 'high')] })] });
    expect(plate.blank.entities.filter((e) => e.kind === 'text' && e.text === '20.12')).toHaveLength(1);
  });
});
