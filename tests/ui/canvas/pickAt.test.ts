import { describe, expect, it } from 'vitest';
import { arcAbout, line } from '../../../src/core/geometry/segments';
import type { Entity, Pick } from '../../../src/drawing/entities';
import { pickAt } from '../../../src/ui/canvas/pickAt';

const leg: Pick = { kind: 'leg', leg: 'a' };
const bend: Pick = { kind: 'bend', leg: 'b' };
const hole: Pick = { kind: 'cutout', leg: 'a', cutout: 'h' };

const rectangle = (x0: number, y0: number, x1: number, y1: number) => {
  const c = [{ x: x0, y: y0 }, { x: x1, y: y0 }, { x: x1, y: y1 }, { x: x0, y: y1 }] as const;
  return [line(c[0], c[1]), line(c[1], c[2]), line(c[2], c[3]), line(c[3], c[0])];
};

/** A leg of 100 by 20 with a hole at 30, a bend zone after it, and a figure over it. 1 px is 0.25 mm. */
const PX = 0.25;
const entities: readonly Entity[] = [
  { kind: 'path', key: 'a area', role: 'leg area', pick: leg, runs: [{ segments: rectangle(0, 0, 100, 20), closed: true }] },
  { kind: 'path', key: 'b zone', role: 'bend zone', pick: bend, runs: [{ segments: rectangle(100, 0, 104, 20), closed: true }] },
  { kind: 'contours', key: 'a h', role: 'hole', pick: hole, contours: [{ kind: 'circle', centre: { x: 30, y: 10 }, radius: 1.5 }] },
  { kind: 'path', key: 'a outline', role: 'outline', runs: [{ segments: rectangle(0, 0, 100, 20), closed: true }] },
  { kind: 'text', key: 'a length text', role: 'dimension text', pick: leg, field: 'parts.p.legs.a.length', at: { x: 50, y: 30 }, text: '100', align: 'middle', rotation: 0 },
];
const at = (x: number, y: number) => pickAt(entities, { x, y }, PX);

describe('what a pointer takes hold of', () => {
  it('takes the leg inside it, and the hole inside that', () => {
    expect(at(60, 10)?.pick).toEqual(leg);
    expect(at(30, 10)?.pick).toEqual(hole);
  });

  it('gives a hole of 6 px radius a target of 44 px', () => {
    // 15 px off its edge along the leg: 1.5 + 3.75 mm from its middle.
    expect(at(30 + 1.5 + 15 * PX, 10)?.pick).toEqual(hole);
    expect(at(30 + 1.5 + 18 * PX, 10)?.pick).toEqual(leg);
  });

  it('gives a narrow bend a target of some 44 px, and leaves the rest to the leg', () => {
    expect(at(102, 10)?.pick).toEqual(bend);
    expect(at(100 - 12 * PX, 10)?.pick).toEqual(bend);
    expect(at(100 - 16 * PX, 10)?.pick).toEqual(leg);
  });

  it('takes a figure with its field', () => {
    const picked = at(50, 31);
    expect(picked?.pick).toEqual(leg);
    expect(picked?.field).toBe('parts.p.legs.a.length');
    expect(at(60, 10)?.field).toBeUndefined();
  });

  it('takes the nearer of two holes', () => {
    const two: Entity[] = ['h', 'k'].map((id, i) => ({ kind: 'contours', key: id, role: 'hole', pick: { kind: 'cutout', leg: 'a', cutout: id }, contours: [{ kind: 'circle', centre: { x: 10 + i * 8, y: 0 }, radius: 1 }] }));
    expect(pickAt(two, { x: 13.8, y: 0 }, PX)?.key).toBe('h');
    expect(pickAt(two, { x: 14.2, y: 0 }, PX)?.key).toBe('k');
  });

  it('lets the smaller of two things win where both are about the pointer', () => {
    const nested: Entity[] = [1, 5].map((radius) => ({ kind: 'contours', key: `r${radius}`, role: 'hole', pick: hole, contours: [{ kind: 'circle', centre: { x: 0, y: 0 }, radius }] }));
    expect(pickAt(nested, { x: 0.2, y: 0 }, PX)?.key).toBe('r1');
    expect(pickAt(nested.toReversed(), { x: 0.2, y: 0 }, PX)?.key).toBe('r1');
  });

  it('knows the inside of a path with arcs', () => {
    const round: Entity = { kind: 'path', key: 'slot', role: 'leg area', pick: leg, runs: [{ closed: true, segments: [line({ x: 0, y: -20 }, { x: 50, y: -20 }), arcAbout({ x: 50, y: 0 }, 20, -Math.PI / 2, Math.PI), line({ x: 50, y: 20 }, { x: 0, y: 20 }), line({ x: 0, y: 20 }, { x: 0, y: -20 })] }] };
    expect(pickAt([round], { x: 68, y: 0 }, PX, 0.1)?.key).toBe('slot');
    expect(pickAt([round], { x: 68, y: 18 }, PX, 0.1)).toBeUndefined();
  });

  it('takes nothing on empty paper, nor an outline that belongs to nothing', () => {
    expect(at(30, -40)).toBeUndefined();
    expect(pickAt(entities.slice(3, 4), { x: 50, y: 0 }, PX)).toBeUndefined();
  });
});
