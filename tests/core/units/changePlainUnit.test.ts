import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changePlainUnit } from '../../../src/core/units/changePlainUnit';
import { evaluate, type Wanted } from '../../../src/core/units/evaluate';
import { resolveSizes } from '../../../src/core/units/namedSizes';
import { builtEntry, INCH_JOB, MM_JOB } from './entries';

describe('when plain numbers come to mean another unit', () => {
  it.each<readonly [string, Wanted | 'size', string]>([
    ['12', 'length', '12 mm'],
    [' 12.5 ', 'length', ' 12.5 mm '],
    ['-5', 'length', '-5 mm'],
    ['1 3/8', 'length', '1 3/8 mm'],
    ['12 + gap', 'length', '12 mm + gap'],
    ['2+1/4', 'length', '(2+1/4) mm'],
    ['(2+1/4)', 'length', '(2+1/4) mm'],
    ['3-1/2', 'length', '(3-1/2) mm'],
    ['gap + 3-1/2', 'length', 'gap + 3 mm-(1/2) mm'],
    ['gap*3-½', 'length', 'gap*3-½ mm'],
    ['pegs*4 + gap/2', 'length', '(pegs*4) mm + gap/2'],
    ['pegs', 'length', 'pegs mm'],
    ['full 42', 'length', 'full 42 mm'],
    ['max(3; gap; 4)', 'length', 'max(3 mm; gap; 4 mm)'],
    ['2 * (gap - 1)', 'length', '2 * (gap - 1 mm)'],
    ['gap*2', 'length', 'gap*2'],
    ['3/8in', 'length', '3/8in'],
    ['45', 'angle', '45'],
    ['90 - rake', 'angle', '90 - rake'],
    ['0.44', 'number', '0.44'],
    ['(gap + 2)/gap', 'number', '(gap + 2 mm)/gap'],
    ['6', 'count', '6'],
    ['6', 'size', '6'],
    ['12 + gap', 'size', '12 mm + gap'],
    ['12 + gp', 'length', '12 + gp'],
    ['', 'length', ''],
    ['12 +', 'length', '12 +'],
    ['gap*gap + 1*gap', 'length', 'gap*gap + 1*gap'],
  ])('%s as %s becomes %s', (text, wanted, rewritten) => {
    expect(changePlainUnit(text, wanted, MM_JOB, 'in')).toBe(rewritten);
  });

  it('goes the other way too, and stays where nothing changes', () => {
    expect(changePlainUnit('1 3/8 + gap', 'length', INCH_JOB, 'mm')).toBe('1 3/8 in + gap');
    // Without its brackets the end would read as 3-½ in, three and a half inches.
    expect(changePlainUnit('gap*3-½', 'length', INCH_JOB, 'mm')).toBe('gap*3-(½) in');
    expect(changePlainUnit('12', 'length', MM_JOB, 'mm')).toBe('12');
  });

  it('writes the value where the text would grow too long', () => {
    const text = `gap${'+1'.repeat(90)}`;
    expect(changePlainUnit(text, 'length', MM_JOB, 'in')).toBe('100 mm');
    expect(changePlainUnit(`(${text})/gap`, 'number', MM_JOB, 'in')).toBe('10');
    expect(changePlainUnit(`(${text})/gap*1°`, 'angle', MM_JOB, 'in')).toMatch(/^0\.1745329\d+ rad$/);
  });

  it.each([[MM_JOB, 'in'], [INCH_JOB, 'mm']] as const)('the value stays, whatever the entry (%#)', (context, to) => {
    let changed = 0;
    fc.assert(
      fc.property(builtEntry, fc.constantFrom<Wanted>('length', 'number'), (text, wanted) => {
        const before = evaluate(text, wanted, context);
        const rewritten = changePlainUnit(text, wanted, context, to);
        if (!before.ok) return rewritten === text;
        if (rewritten !== text) changed += 1;
        const after = evaluate(rewritten, wanted, { ...context, plain: to });
        return after.ok && Math.abs(after.value - before.value) <= 1e-11 * Math.max(1, Math.abs(before.value));
      }),
      { numRuns: 3000 },
    );
    expect(changed).toBeGreaterThan(500);
  });

  it('a whole set of sizes keeps its lengths', () => {
    const stock = { thickness: 1.6, radius: 2 };
    const sizes = [{ name: 'pitch', text: '12' }, { name: 'strap', text: '4*pitch + gap + 1' }, { name: 'gap', text: 'pitch + thickness' }];
    const before = resolveSizes(sizes, stock, 'mm', 12);
    const rewritten = sizes.map(({ name, text }) => ({ name, text: changePlainUnit(text, 'size', { plain: 'mm', scale: 12, sizes: before.values }, 'in') }));
    expect(rewritten.map(({ text }) => text)).toEqual(['12', '(4*pitch) mm + gap + 1 mm', 'pitch mm + thickness']);
    const after = resolveSizes(rewritten, stock, 'in', 12);
    expect(after.values.get('strap')?.value).toBeCloseTo(62.6, 12);
    expect(after.values).toEqual(before.values);
  });
});
