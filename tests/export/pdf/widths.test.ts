/** The drawings keep room for lettering from a table; the paper's faces must fit in it. */
import { jsPDF } from 'jspdf';
import { describe, expect, it } from 'vitest';
import { OTHER_SCRIPTS } from '../../../src/drawing/otherScripts';
import { pdfFonts } from '../../../src/export/pdf/pdfFonts';
import { must } from '../must';
import { fonts } from './fonts';

const doc = new jsPDF({ unit: 'pt' });
must(pdfFonts.load(doc, fonts));
doc.setFontSize(1000);
const width = (face: 'regular' | 'bold', character: string): number => {
  doc.setFont(pdfFonts.family(face), 'normal');
  return doc.getTextWidth(character);
};

describe('widths of accented, Greek and Cyrillic letters and signs', () => {
  const letters = Object.entries(OTHER_SCRIPTS);
  it('are no less than those of the paper face, bold ones by the share given, and no more than a little more', () => {
    expect(letters.length).toBeGreaterThan(400);
    const narrow = letters.filter(([c, room]) => width('regular', c) > room || width('bold', c) > room * 1.08);
    expect(narrow).toEqual([]);
    // A table that is far too wide would pass the above and waste the paper.
    const wide = letters.filter(([c, room]) => room > Math.max(width('regular', c), width('bold', c) / 1.08) + 21);
    expect(wide).toEqual([]);
  });
  it('are there for every letter of Greek and Russian', () => {
    for (const c of 'ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρστυφχψωςάέήίόύώАБВГДЕЁЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯабвгдеёжзийклмнопрстуфхцчшщъыьэюя') expect(OTHER_SCRIPTS).toHaveProperty([c]);
  });
});
