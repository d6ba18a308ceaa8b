import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distinctNames, fileName } from '../../src/export/fileName';

describe('names of files', () => {
  it('say the part, the stock and how many', () => {
    expect(fileName({ part: 'Front strap', stock: 'brass 1.6', quantity: 12 }, 'dxf')).toBe('Front strap - brass 1.6 - 12 off.dxf');
    expect(fileName({ part: 'Front strap' }, 'svg')).toBe('Front strap.svg');
  });

  it.each([
    ['nothing', '', 'part.dxf'],
    ['dots and spaces', ' .. ', 'part.dxf'],
    ['a path upwards', '../../etc/strap', 'etc-strap.dxf'],
    ['slashes both ways', 'a/b\\c', 'a-b-c.dxf'],
    ['quotes', `"lever" 'long' \`x\``, 'lever long x.dxf'],
    ['signs that systems keep', 'a<b>c:d|e?f*g', 'abc-d-efg.dxf'],
    ['line breaks', 'back\r\nplate\t2', 'back plate 2.dxf'],
    ['a nul', 'strap\u0000.exe', 'strap .exe.dxf'],
    ['a turned direction that hides the ending', 'strap\u202Efxd.exe', 'strapfxd.exe.dxf'],
    ['a trailing dot', 'Strap.', 'Strap.dxf'],
    ['a leading hyphen', '-rf strap', 'rf strap.dxf'],
    ['accented letters', 'Bügel für Lüfterstütze', 'Bügel für Lüfterstütze.dxf'],
    ['accents written apart', 'Bu\u0308gel', 'Bügel.dxf'],
    ['emoji', 'Hebel 🔧', 'Hebel 🔧.dxf'],
    ['half an emoji', 'Hebel \uD83D', 'Hebel.dxf'],
    ['a device', 'CON', 'part CON.dxf'],
    ['a device with an ending', 'nul.txt', 'part nul.txt.dxf'],
    ['a device with a figure', 'Com1', 'part Com1.dxf'],
    ['no device', 'Console', 'Console.dxf'],
  ])('stand on every system: %s', (_, part, wanted) => {
    expect(fileName({ part }, 'dxf')).toBe(wanted);
  });

  it.each([0, -1, 2.5, NaN, Infinity])('leave out a quantity of %s', (quantity) => {
    expect(fileName({ part: 'Lever', quantity }, 'dxf')).toBe('Lever.dxf');
  });

  it('keep stock and quantity when the part has a very long name, and cut no character in two', () => {
    const name = fileName({ part: '曲げ🔧'.repeat(60), stock: 'brass 1.6', quantity: 3 }, 'dxf');
    expect(name).toMatch(/^(曲げ🔧|曲げ|曲)+ - brass 1\.6 - 3 off\.dxf$/u);
    expect(Buffer.byteLength(name)).toBeLessThanOrEqual(200);
  });

  it('are safe whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), fc.string({ unit: 'grapheme', maxLength: 300 }), fc.integer(), (part, stock, quantity) => {
        const name = fileName({ part, stock, quantity }, 'dxf');
        // oxlint-disable-next-line no-control-regex
        expect(name).not.toMatch(/[\u0000-\u001F<>:"/\\|?*'`\u202A-\u202E\p{Cs}]/u);
        expect(name).toMatch(/^[^\s.-].*\.dxf$/su);
        expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i);
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(200);
        expect(name).toBe(name.normalize('NFC'));
      }),
      { numRuns: 1000, seed: 20261125 },
    );
  });
});

describe('names in one set', () => {
  it('are told apart without regard to capitals', () => {
    expect(distinctNames(['Strap.dxf', 'strap.DXF', 'Lever.dxf', 'STRAP.dxf'])).toEqual(['Strap.dxf', 'strap (2).DXF', 'Lever.dxf', 'STRAP (3).dxf']);
  });

  it('do not run into a name that already has a figure', () => {
    expect(distinctNames(['a.dxf', 'a (2).dxf', 'A.dxf'])).toEqual(['a.dxf', 'a (2).dxf', 'A (3).dxf']);
    expect(distinctNames(['a.dxf', 'a.dxf', 'a (2).dxf'])).toEqual(['a.dxf', 'a (2).dxf', 'a (2) (2).dxf']);
  });

  it('are told apart where two spellings look the same, and without an ending', () => {
    expect(distinctNames(['B\u00FCgel', 'Bu\u0308gel', '.dxf', '.dxf'])).toEqual(['B\u00FCgel', 'Bu\u0308gel (2)', '.dxf', '.dxf (2)']);
  });
});
