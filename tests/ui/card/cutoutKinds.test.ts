import { describe, expect, it } from 'vitest';
import type { JobCutoutShape, JobPattern } from '../../../src/job/schema';
import { patternOf, shapeOf } from '../../../src/ui/card/cutoutKinds';

describe('shapeOf', () => {
  const hole: JobCutoutShape = { kind: 'round', diameter: 'pegHole' };

  it('makes a slot as wide as the hole and twice as long', () => {
    expect(shapeOf('slot', hole)).toEqual({ kind: 'slot', length: '2*(pegHole)', width: 'pegHole', turn: '0' });
  });

  it('brings the hole back as it was typed', () => {
    expect(shapeOf('round', shapeOf('rectangle', hole))).toEqual(hole);
  });

  it('leaves one of the same kind untouched', () => {
    expect(shapeOf('round', hole)).toBe(hole);
  });
});

describe('patternOf', () => {
  const row: JobPattern = { kind: 'row', direction: 'across', count: '3', pitch: '1/2in' };

  it('keeps a row across as the grid’s way across', () => {
    expect(patternOf('grid', row, true)).toMatchObject({ acrossCount: '3', acrossPitch: '1/2in' });
  });

  it('keeps the way along when a grid becomes a row', () => {
    const grid: JobPattern = { kind: 'grid', alongCount: '4', alongPitch: '11', acrossCount: '2', acrossPitch: '7' };
    expect(patternOf('row', grid, true)).toEqual({ kind: 'row', direction: 'along', count: '4', pitch: '11' });
  });

  it('begins with a pitch in the job’s own unit', () => {
    expect(patternOf('row', { kind: 'single' }, true)).toMatchObject({ pitch: '10' });
    expect(patternOf('row', { kind: 'single' }, false)).toMatchObject({ pitch: '3/8' });
  });
});
