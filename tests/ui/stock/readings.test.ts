import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../../src/job/exampleJob';
import { writeField } from '../../../src/job/fields';
import { scaleReading, sizeReading, sizeValue, stepReading, stockReading } from '../../../src/ui/stock/readings';

describe('readings of fields that belong to no part', () => {
  it('works out a stock that is not the stock of the part in view', () => {
    expect(stockReading('stainless', 'stocks.stainless.radius')(exampleJob)).toEqual({ ok: true, value: 1.5 });
  });

  it('tells a fault where it is and lets what waits for it wait', () => {
    const job = writeField(exampleJob, 'stocks.stainless.thickness', 'x');
    const thickness = stockReading('stainless', 'stocks.stainless.thickness')(job);
    const radius = stockReading('stainless', 'stocks.stainless.radius')(job);
    expect(!thickness.ok && thickness.problem.says).toContain('no size called x');
    expect(radius.ok && Number.isNaN(radius.value)).toBe(true);
  });

  it('is the same function each time, so that a field is not worked out for nothing', () => {
    expect(sizeReading('pitch')).toBe(sizeReading('pitch'));
    expect(stockReading('brass', 'stocks.brass.radius')).toBe(stockReading('brass', 'stocks.brass.radius'));
  });

  it('gives a named size with its dimension, or the fault of its name', () => {
    const longer = writeField(exampleJob, 'sizes.plate-length.text', '2*pitch + 1in');
    expect(sizeValue(longer, 'plate-length')).toEqual({ ok: true, value: { value: 55.4, dimension: 'length' } });
    const twice = sizeValue(writeField(exampleJob, 'sizes.plate-length.name', 'pitch'), 'plate-length');
    expect(!twice.ok && twice.problem.field).toBe('sizes.plate-length.name');
  });

  it('refuses a scale and a step of nothing', () => {
    expect(scaleReading(exampleJob)).toEqual({ ok: true, value: 4 });
    expect(scaleReading(writeField(exampleJob, 'scale', '0')).ok).toBe(false);
    expect(stepReading('length')(writeField(exampleJob, 'step.length', '0')).ok).toBe(false);
    expect(stepReading('length')(exampleJob)).toEqual({ ok: true, value: 0.5 });
  });
});
