import { describe, expect, it } from 'vitest';
import { matches, type Press } from '../../../src/ui/keys/matches';

const press = (key: string, held: Partial<Press> = {}): Press => ({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held });

describe('matches', () => {
  it('takes the command key of the other keyboard for Ctrl', () => {
    expect(matches('Ctrl Z', press('z', { ctrlKey: true }))).toBe(true);
    expect(matches('Ctrl Z', press('z', { metaKey: true }))).toBe(true);
  });

  it('tells undo from redo by Shift, whatever case the letter comes in', () => {
    const redo = press('Z', { ctrlKey: true, shiftKey: true });
    expect(matches('Ctrl Z', redo)).toBe(false);
    expect(matches('Ctrl Shift Z', redo)).toBe(true);
  });

  it('leaves a letter alone that is pressed without its Ctrl, or with Alt as well', () => {
    expect(matches('Ctrl Z', press('z'))).toBe(false);
    expect(matches('Ctrl Z', press('z', { ctrlKey: true, altKey: true }))).toBe(false);
  });

  it('knows keys by the names on the caps', () => {
    expect(matches('Esc', press('Escape'))).toBe(true);
    expect(matches('Alt PageDown', press('PageDown', { altKey: true }))).toBe(true);
    expect(matches('F1', press('F1'))).toBe(true);
  });
});
