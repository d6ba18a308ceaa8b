import { describe, expect, it } from 'vitest';
import { printedDay } from '../../../src/drawing/papers/printedDay';

describe('a day as it is printed', () => {
  it.each([
    ['2026-11-05', '5 November 2026'],
    ['2026-01-31', '31 January 2026'],
    ['2028-02-29', '29 February 2028'],
  ])('%s', (iso, printed) => expect(printedDay(iso)).toEqual({ ok: true, value: printed }));

  it.each(['', 'today', '5.11.2026', '2026-13-01', '2026-00-10', '2026-02-29', '2026-04-31', '2026-11-5', '2026-11-05T10:00', ' 2026-11-05'])('"%s" is none', (iso) => {
    const day = printedDay(iso);
    expect(day.ok).toBe(false);
    if (!day.ok) expect(day.problem.says).toBe(`"${iso}" is not a day. Give it as year, month and day, such as 2026-11-05.`);
  });
});
