import { describe, expect, it } from 'vitest';
import { checkPart } from '../../../src/core/checks/checkPart';
import { layOut } from '../../../src/core/part/layOut';
import { unfold } from '../../../src/core/part/unfold';
import type { Finding } from '../../../src/core/part/layoutTypes';
import type { Part } from '../../../src/core/part/types';
import { bend, cutout, leg, lug, part, round } from './sampleParts';

function findings(subject: Part): readonly Finding[] {
  const laid = layOut(subject);
  if (!laid.ok) throw new Error(laid.problems.map((p) => p.says).join(' '));
  return checkPart(laid.value, unfold(laid.value), 'brass');
}
const says = (subject: Part, level: Finding['level']): string[] => findings(subject).filter((f) => f.level === level).map((f) => f.says);

describe('a sound part', () => {
  it('has only good findings, and says so', () => {
    const subject = part([leg(40, undefined, { cutouts: [cutout(round(4), 20)] }), leg(30, bend(0, 90, 'up'))]);
    expect(says(subject, 'stop')).toEqual([]);
    expect(says(subject, 'care')).toEqual([]);
    expect(says(subject, 'good')).toHaveLength(3);
  });
});

describe('holes and edges', () => {
  it('stops a hole larger than its leg, and says by how much it breaks through', () => {
    // Ø20 on the centre line of a 16 mm leg: 10 − 8 = 2 mm over each edge.
    expect(says(part([leg(60, undefined, { cutouts: [cutout(round(20), 30)] })]), 'stop')).toEqual([expect.stringContaining('by 2.00 mm')]);
  });
  it('does not call an outline whole that an opening breaks through, and names the hole of a row by its number', () => {
    const row = cutout(round(4), 10, 0, { kind: 'row', direction: 'along', count: 4, pitch: 20 });
    const subject = part([leg(60, undefined, { cutouts: [row] })]);
    expect(says(subject, 'good')).toEqual([]);
    expect(says(subject, 'stop')).toEqual([expect.stringMatching(/^Hole 4 of the row in leg A /)]);
  });
  it('stops a hole that stands off the metal', () => {
    expect(says(part([leg(60, undefined, { cutouts: [cutout(round(4), 30, 20)] })]), 'stop')).toEqual([expect.stringContaining('stands off the metal')]);
  });
  it('takes a web of exactly one thickness as enough and a hair less as thin', () => {
    // Web to the long edge: 8 − across − radius.
    const at = (across: number) => says(part([leg(60, undefined, { cutouts: [cutout(round(4), 30, across)] })]), 'care');
    expect(at(8 - 2 - 1.6)).toEqual([]);
    expect(at(8 - 2 - 1.59)).toEqual([expect.stringContaining('leaves 1.59 mm')]);
  });
  it('measures the web of a turned slot from its true ends', () => {
    // A 10 × 4 slot turned a right angle on the centre line reaches 5 mm towards the edge at 8: web 3.
    const slot = cutout({ kind: 'slot', length: 10, width: 4, turn: Math.PI / 2 }, 30);
    const longer = cutout({ kind: 'slot', length: 13.5, width: 4, turn: Math.PI / 2 }, 30);
    expect(says(part([leg(60, undefined, { cutouts: [slot] })]), 'care')).toEqual([]);
    expect(says(part([leg(60, undefined, { cutouts: [longer] })]), 'care')).toEqual([expect.stringContaining('leaves 1.25 mm')]);
  });
});

describe('holes and each other', () => {
  it('stops two that overlap and one inside another', () => {
    expect(says(part([leg(60, undefined, { cutouts: [cutout(round(6), 20), cutout(round(6), 24)] })]), 'stop')).toEqual([expect.stringContaining('run into each other')]);
    expect(says(part([leg(60, undefined, { cutouts: [cutout(round(10), 30), cutout(round(2), 30.5)] })]), 'stop')).toEqual([expect.stringContaining('run into each other')]);
  });
  it('speaks once for a whole row that leaves thin bridges', () => {
    const row = cutout(round(4), 10, 0, { kind: 'row', direction: 'along', count: 8, pitch: 5 });
    expect(says(part([leg(60, undefined, { cutouts: [row] })]), 'care')).toEqual([expect.stringContaining('leave 1.00 mm')]);
  });
});

describe('holes and bends', () => {
  const withHole = (along: number) => part([leg(40, undefined, { cutouts: [cutout(round(4), along)] }), leg(30, bend(0, 90, 'up'))]);
  it('asks for 2 t + r from the edge of the hole to the tangent line: 5.2 mm at t 1.6 and r 2', () => {
    expect(says(withHole(40 - 2 - 5.2), 'care')).toEqual([]);
    expect(says(withHole(40 - 2 - 4.4), 'care')).toEqual([expect.stringContaining('starts 4.40 mm from bend 1. Nearer than 5.20 mm')]);
  });
  it('says how far a hole reaches into the bend', () => {
    expect(says(withHole(39), 'care')).toEqual([expect.stringContaining('reaches 1.00 mm into bend 1')]);
  });
  it('stops a hole that stands wholly beyond the bend', () => {
    expect(says(withHole(60), 'stop').join()).toContain('beyond bend 1');
  });
  it('looks at the bend before the leg as well', () => {
    const subject = part([leg(40), leg(30, bend(0, 90, 'up'), { cutouts: [cutout(round(4), 4)] })]);
    expect(says(subject, 'care')).toEqual([expect.stringContaining('starts 2.00 mm from bend 1')]);
  });
});

describe('the bent shape', () => {
  it('stops a section that runs through itself and names both legs', () => {
    // Four right angles the same way with growing room inside is a spiral; with too little it meets the first leg.
    const around = (back: number, down: number) =>
      part([leg(40), leg(30, bend(0, 90, 'up')), leg(back, bend(1, 90, 'up')), leg(down, bend(2, 90, 'up'))]);
    expect(says(around(30, 60), 'stop')).toEqual([expect.stringMatching(/leg D runs through leg A/)]);
    const clear = around(30, 20);
    expect(says(clear, 'stop')).toEqual([]);
  });
  it('lets a hem close flat on itself', () => {
    expect(says(part([leg(40), leg(12, bend(0, 180, 'up', 0))]), 'stop')).toEqual([]);
  });
  it('is not misled by two slight bends close together', () => {
    expect(says(part([leg(40), leg(0.2, bend(0, 10, 'up')), leg(40, bend(1, 10, 'down'))]), 'stop')).toEqual([]);
  });
});

describe('the blank', () => {
  it('stops an outline that crosses itself and says where', () => {
    // Two lugs on one edge, 4 mm apart where they are bent, that widen until they overlap.
    const subject = part([leg(80), leg(20, lug(0, 90, 10), { startWidth: 20, endWidth: 36 }), leg(20, lug(0, 90, 34), { startWidth: 20, endWidth: 36 })]);
    expect(says(subject, 'stop').join()).toContain('runs into itself');
  });
});

describe('grip, radius and shoulders', () => {
  it('asks for four thicknesses outside on a free leg', () => {
    // 90°, r 2, t 1.6: outside = straight + 3.6; 4 t = 6.4, so 2.8 straight is just enough.
    expect(says(part([leg(40), leg(2.8, bend(0, 90, 'up'))]), 'care')).toEqual([]);
    expect(says(part([leg(40), leg(2.7, bend(0, 90, 'up'))]), 'care')).toEqual([expect.stringContaining('stands 6.30 mm outside')]);
  });
  it('warns of a radius under one thickness in brass', () => {
    expect(says(part([leg(40), leg(30, bend(0, 90, 'up', 1.5))]), 'care')).toEqual([expect.stringContaining('Bend 1 has an inside radius of 1.50 mm')]);
  });
  it('warns of a step in width at a bend', () => {
    expect(says(part([leg(40), leg(30, bend(0, 90, 'up'), { startWidth: 10, endWidth: 10 })]), 'care')).toEqual([expect.stringContaining('steps by 3.00 mm a side')]);
  });
});

describe('ten thousand holes', () => {
  it('are checked without burying the maker in sentences', () => {
    const grid = cutout(round(2), 10, 0, { kind: 'grid', alongCount: 100, alongPitch: 3, acrossCount: 100, acrossPitch: 3 });
    const subject = part([leg(400, undefined, { startWidth: 400, endWidth: 400, cutouts: [grid] })]);
    const all = findings(subject);
    expect(all.length).toBeLessThan(10);
    expect(says(subject, 'care')).toEqual([expect.stringContaining('leave 1.00 mm')]);
  });
});
