import { describe, expect, it } from 'vitest';
import { exampleJob } from '../../../src/job/exampleJob';
import { NOT_MEASURED, paperSetting, readPrinter, type PaperSetting } from '../../../src/ui/papers/paperSetting';
import { chosenParts, correctionOf, dayOf, wishOf } from '../../../src/ui/papers/wish';

const setting = (more: Partial<PaperSetting> = {}): PaperSetting => ({ ...paperSetting.getInitialState(), ...more });
const measured = (more: Partial<PaperSetting['measured']>) => ({ inForce: { x: 1, y: 1 }, measured: { ...NOT_MEASURED, ...more } });

describe('parts to print', () => {
  it.each([
    ['the part in view at first', null, ['strap']],
    ['those chosen, in the order of the job', ['lever', 'back-plate'], ['back-plate', 'lever']],
    ['none where every one was taken off', [], []],
    ['the part in view where those chosen are of another job', ['gone'], ['strap']],
  ])('are %s', (_, chosen, parts) => expect(chosenParts(setting({ chosen }), exampleJob, 'strap')).toEqual(parts));

  it('have the copies that were typed, one where none were, and no number where it is none', () => {
    const own = setting({ chosen: ['strap', 'lever', 'bracket'], copies: { lever: '3*4', bracket: '1.5' } });
    expect(wishOf(own, exampleJob, 'strap', '2026-11-05').wish.parts).toEqual([{ id: 'strap', copies: 1 }, { id: 'bracket', copies: NaN }, { id: 'lever', copies: 12 }]);
  });
});

describe('what the bars measured', () => {
  it('stretches each direction by itself', () => {
    // By hand: 100 / 99.5 = 1.005025; 4 / 4.02 = 0.995025.
    expect(correctionOf(measured({ xMm: '99.5', yIn: '4.02' }))).toEqual({ ok: true, value: { x: expect.closeTo(1.005025, 6), y: expect.closeTo(0.995025, 6) } });
  });
  it('is what the next print is stretched by', () => {
    expect(wishOf(setting(measured({ xMm: '99.5' })), exampleJob, 'strap', '2026-11-05')).toMatchObject({ bars: undefined, wish: { correction: { x: expect.closeTo(1.005025, 6), y: 1 } } });
  });
  it('may have a comma, a unit or a fraction', () => {
    expect(correctionOf(measured({ xMm: '99,5' }))).toEqual(correctionOf(measured({ xMm: '99.5 mm' })));
    expect(correctionOf(measured({ xIn: '3 63/64' }))).toEqual({ ok: true, value: { x: expect.closeTo(4 / (3 + 63 / 64), 9), y: 1 } });
  });
  it('counts on top of the correction in force, and keeps that where nothing was measured', () => {
    expect(correctionOf({ ...measured({ xMm: '100.2' }), inForce: { x: 1.01, y: 0.99 } })).toEqual({ ok: true, value: { x: expect.closeTo(1.01 / 1.002, 9), y: 0.99 } });
  });
  it.each([
    ['xMm', '80', /given as 80 mm\. It must measure 95 to 105 mm/],
    ['yIn', '40', /given as 40 in/],
    ['yMm', 'long', /long/],
  ] as const)('is refused at %s %s with a sentence, and the correction in force stays', (bar, text, says) => {
    const own = setting({ inForce: { x: 1.01, y: 1 }, measured: { ...NOT_MEASURED, [bar]: text } });
    const { wish, bars } = wishOf(own, exampleJob, 'strap', '2026-11-05');
    expect(bars).toMatchObject({ field: bar, says: expect.stringMatching(says) });
    expect(wish.correction).toEqual({ x: 1.01, y: 1 });
  });
});

describe('what this browser keeps of the printer', () => {
  const FIRST = readPrinter(null);
  it('comes back as it was', () => {
    const own = { paper: 'Letter', turn: 'lying', overlap: '15', gap: '3', inForce: { x: 1.004, y: 0.998 }, measured: { xMm: '99.9', xIn: '', yMm: '', yIn: '' } } as const;
    expect(readPrinter(JSON.stringify(own))).toEqual(own);
  });
  it.each(['', 'not json', '7', 'null', '[]', '{"paper":"B5","turn":"over","overlap":7,"inForce":{"x":7,"y":null},"measured":"all"}', '{"inForce":{"x":"1e999"}}'])('is as on the first visit for %s', (text) => expect(readPrinter(text)).toEqual(FIRST));
  it('starts on A4 without a correction', () => expect(FIRST).toMatchObject({ paper: 'A4', turn: 'auto', inForce: { x: 1, y: 1 } }));
});

it('the day is that of the place, not of Greenwich', () => expect(dayOf(new Date(2026, 0, 5, 0, 30))).toBe('2026-01-05'));
