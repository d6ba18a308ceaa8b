import { describe, expect, it } from 'vitest';
import { cutDrawing } from '../../src/drawing/cutDrawing';
import { planLayers } from '../../src/export/dxf/layers';
import { rawDxf } from '../../src/export/dxf/rawDxf';
import { dxfShapes } from '../../src/export/dxf/shapes';
import { writeDxf } from '../../src/export/dxf/writeDxf';
import { must } from './must';
import { frontStrap, roundPlate, settings } from './sampleBlanks';
import { strictTags } from './strictTags';

const drawingOf = (bendLines: 'none' | 'layer' | 'nicks', blank = frontStrap()) => must(cutDrawing(blank, { bendLines, thickness: 1.6 })).drawing;
const clean = must(writeDxf(drawingOf('layer'), settings));
const swapped = (from: string | RegExp, to: string): readonly string[] => {
  const spoiled = clean.replace(from, to);
  expect(spoiled).not.toBe(clean);
  return strictTags(spoiled);
};

describe('the tags of a DXF, strictly', () => {
  it.each(['none', 'layer', 'nicks'] as const)('finds nothing with bend lines: %s', (bendLines) => {
    expect(strictTags(must(writeDxf(drawingOf(bendLines), settings)))).toEqual([]);
    expect(strictTags(must(writeDxf(drawingOf(bendLines, roundPlate()), { ...settings, unit: 'in' })))).toEqual([]);
  });

  it('finds what dxf-writer leaves undone when its text is taken as it is', () => {
    const drawing = drawingOf('layer');
    const plan = must(planLayers(drawing, settings.layers));
    const found = strictTags(rawDxf(must(dxfShapes(drawing, plan, 1)), plan.layers.length, 'mm')).join('\n');
    for (const fault of [
      'the file does not end in CRLF',
      '$ACADVER is not first',
      'header: no $EXTMIN',
      'header: no $MEASUREMENT',
      'LWPOLYLINE: code 8 under AcDbPolyline',
      'CIRCLE: owned by BLOCK, not by the model',
      'VPORT: no code 12 under AcDbViewportTableRecord',
      'BLOCK_RECORD *Model_Space: no layout that points back',
      'objects: no ACAD_LAYOUT',
      'not a plain real',
    ]) {
      expect(found).toContain(fault);
    }
  });

  it.each([
    ['an exponent', /\r\n 10\r\n35\.0/, '\r\n 10\r\n3.5e1', 'not a plain real'],
    ['NaN', /\r\n 40\r\n3\.0/, '\r\n 40\r\nNaN', 'not a plain real'],
    ['a lone line feed', 'AcDbPolyline\r\n', 'AcDbPolyline\n', 'a line does not end in CRLF'],
    ['no last line end', /EOF\r\n$/, 'EOF', 'the file does not end in CRLF'],
    ['a wrong count of points', /(AcDbPolyline\r\n 90\r\n)4/, '$15', 'says 5 points'],
    ['an unknown layer', /(LWPOLYLINE[^L]*AcDbEntity\r\n  8\r\n)OUTLINE/, '$1OUTSIDE', 'is not in the table'],
    ['a dangling pointer', /390\r\n[0-9A-F]+/, '390\r\nFFF', 'points at FFF'],
    ['a handle used twice', /(CIRCLE\r\n  5\r\n)[0-9A-F]+/, '$11', 'is used twice'],
    ['a wrong owner', /(CIRCLE\r\n  5\r\n[0-9A-F]+\r\n330\r\n)[0-9A-F]+/, '$11', "not by the model's BLOCK_RECORD"],
    ['wrong units', /\$MEASUREMENT\r\n 70\r\n1/, '$$MEASUREMENT\r\n 70\r\n0', 'units 4/0'],
    ['more than half a turn in one bulge', /( 42\r\n)0\.414213562373/, '$19.5', 'a bulge of more than half a turn'],
    ['a point twice', /( 20\r\n)0\.0(\r\n 10\r\n)110\.0/, '$10.0$20.0', 'are the same'],
    ['a layer twice', /(  2\r\n)CUT-OUTS/, '$1outline', 'a name stands twice'],
    ['a low handle seed', /(\$HANDSEED\r\n  5\r\n)[0-9A-F]+/, '$12', 'not above every handle'],
    ['a radius of nought', /(AcDbCircle[^C]* 40\r\n)3\.0/, '$10.0', 'radius 0.0'],
  ])('would find %s', (_, from, to, says) => {
    expect(swapped(from, to).join('\n')).toContain(says);
  });
});
