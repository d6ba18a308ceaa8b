import { bad, good } from '../../core/result';
import type { Result } from '../../core/result';

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

/**
 * A day as it is printed: `2026-11-05` is `5 November 2026`. The month is in words, since 5/11 is another day across the sea.
 * Refuses what is no day of the calendar.
 */
export function printedDay(iso: string): Result<string> {
  const [, year = '', month = '', day = ''] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(iso) ?? [];
  const there = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  // A day past the end of its month comes out as one of the next.
  const same = year !== '' && there.getUTCDate() === Number(day);
  const name = MONTHS[Number(month) - 1];
  if (!same || name === undefined) return bad('date', `"${iso}" is not a day. Give it as year, month and day, such as 2026-11-05.`);
  return good(`${Number(day)} ${name} ${year}`);
}
