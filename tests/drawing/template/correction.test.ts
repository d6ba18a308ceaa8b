import { describe, expect, it } from 'vitest';
import { correctionFrom } from '../../../src/drawing/template/correction';
import { must } from '../../export/must';

describe('correction of the printer', () => {
  it('is true length over measured length, in each direction by itself', () => {
    const both = must(correctionFrom({ xMm: 99.6, yMm: 100.4 }));
    expect(both.x).toBeCloseTo(100 / 99.6, 12);
    expect(both.y).toBeCloseTo(100 / 100.4, 12);
    expect(must(correctionFrom({ xIn: 3.98 })).x).toBeCloseTo(4 / 3.98, 12);
    expect(must(correctionFrom({}))).toEqual({ x: 1, y: 1 });
  });
  it('takes the mean of both bars of one direction', () => expect(must(correctionFrom({ xMm: 99, xIn: 3.98 })).x).toBeCloseTo(1 / ((0.99 + 0.995) / 2), 12));
  it('goes on from the correction that the print was made with, and leaves it where nothing was measured', () => {
    const first = must(correctionFrom({ xMm: 98 }));
    const second = must(correctionFrom({ xMm: 100.1 }, first));
    expect(second.x).toBeCloseTo((100 / 98) * (100 / 100.1), 12);
    expect(must(correctionFrom({ yMm: 99 }, first)).x).toBe(first.x);
  });
  it('takes the ends of the range', () => {
    expect(correctionFrom({ xMm: 95 }).ok).toBe(true);
    expect(correctionFrom({ yMm: 105 }).ok).toBe(true);
  });
  it.each([
    [{ xMm: 94.9 }, 'xMm', 'The bar across is 100 mm long and was given as 94.9 mm. It must measure 95 to 105 mm; beyond that, print again at 100 %, no fit to page.'],
    [{ yMm: 105.1 }, 'yMm', 'The bar up is 100 mm long and was given as 105.1 mm. It must measure 95 to 105 mm; beyond that, print again at 100 %, no fit to page.'],
    [{ yIn: 101.6 }, 'yIn', 'The bar up is 4 in long and was given as 101.6 in. It must measure 3.80 to 4.20 in; beyond that, print again at 100 %, no fit to page.'],
    [{ xMm: NaN }, 'xMm', 'The bar across is 100 mm long and was given as no number. It must measure 95 to 105 mm; beyond that, print again at 100 %, no fit to page.'],
    [{ xMm: 99, xIn: 4.05 }, 'xIn', 'The two bars across do not agree: they differ by 2.2 mm in 100. Measure both again.'],
  ])('refuses %j', (measured, field, says) => {
    const answer = correctionFrom(measured);
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.problem).toMatchObject({ field, says });
  });
  it('refuses to heap corrections up', () => expect(correctionFrom({ xMm: 95 }, { x: 1.06, y: 1 })).toMatchObject({ ok: false, problem: { field: 'xMm' } }));
});
