/** DXF files read back by dxf-parser and by ezdxf, neither of which knows the writer. */
import Parser from 'dxf-parser';
import type { ICircleEntity, ILineEntity, ILwpolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { contourArea, signedArea } from '../../src/core/geometry/area';
import { cutDrawing } from '../../src/drawing/cutDrawing';
import { writeDxf } from '../../src/export/dxf/writeDxf';
import { must } from './must';
import { readWithEzdxf } from './readers';
import type { ReadDxf } from './readers';
import { frontStrap, roundPlate, settings } from './sampleBlanks';

const blank = frontStrap();
const layered = must(cutDrawing(blank, { bendLines: 'layer', thickness: 1.6 }));
const write = (unit: 'mm' | 'in', drawing = layered.drawing): string => must(writeDxf(drawing, { ...settings, unit }));
const parsed = (text: string) => {
  const dxf = new Parser().parseSync(text);
  if (!dxf) throw new Error('dxf-parser read nothing.');
  return dxf;
};
const areaRead = ({ entities }: ReadDxf): number =>
  entities.reduce((sum, e) => sum + (e.layer === settings.layers.outline ? 1 : -1) * (e.area ?? 0), 0);

describe.each([['mm', 1], ['in', 25.4]] as const)('read by dxf-parser in %s', (unit, mmPerUnit) => {
  const dxf = parsed(write(unit));
  const of = <Kind>(type: string): Kind[] => dxf.entities.filter((e) => e.type === type) as unknown as Kind[];
  const step = 1e-9; // Half a unit in the ninth place, and the last bits of the division by 25.4.

  it('has the units and the layers', () => {
    expect(dxf.header['$INSUNITS']).toBe(unit === 'mm' ? 4 : 1);
    expect(dxf.header['$MEASUREMENT']).toBe(unit === 'mm' ? 1 : 0);
    expect(Object.keys(dxf.tables.layer.layers)).toEqual(['0', 'OUTLINE', 'CUT-OUTS', 'BENDS']);
  });

  it('has the outline point by point, closed, with the bulge of its round end', () => {
    const outline = of<ILwpolylineEntity>('LWPOLYLINE').filter((e) => e.layer === 'OUTLINE');
    expect(outline).toHaveLength(1);
    expect(outline[0]?.shape).toBe(true);
    expect(outline[0]?.vertices).toHaveLength(blank.outline.length);
    for (const [i, segment] of blank.outline.entries()) {
      const v = outline[0]?.vertices[i];
      expect(Math.abs((v?.x ?? NaN) - segment.from.x / mmPerUnit)).toBeLessThan(step);
      expect(Math.abs((v?.y ?? NaN) - segment.from.y / mmPerUnit)).toBeLessThan(step);
      expect(Math.abs((v?.bulge ?? 0) - (segment.kind === 'arc' ? Math.tan(segment.sweep / 4) : 0))).toBeLessThan(1e-12);
    }
  });

  it('has round holes as circles in their places', () => {
    const circles = of<ICircleEntity>('CIRCLE');
    const holes = blank.cutouts.flatMap((c) => (c.contour.kind === 'circle' ? [c.contour] : []));
    expect(circles).toHaveLength(3);
    for (const [i, hole] of holes.entries()) {
      expect(circles[i]?.layer).toBe('CUT-OUTS');
      expect(Math.abs((circles[i]?.center.x ?? NaN) - hole.centre.x / mmPerUnit)).toBeLessThan(step);
      expect(Math.abs((circles[i]?.center.y ?? NaN) - hole.centre.y / mmPerUnit)).toBeLessThan(step);
      expect(Math.abs((circles[i]?.radius ?? NaN) - hole.radius / mmPerUnit)).toBeLessThan(step);
    }
  });

  it('has bend centre lines as lines on their layer', () => {
    const lines = of<ILineEntity>('LINE');
    expect(lines.map((l) => l.layer)).toEqual(['BENDS', 'BENDS']);
    for (const [i, bend] of blank.bends.entries()) {
      for (const end of [0, 1] as const) {
        expect(Math.abs((lines[i]?.vertices[end]?.x ?? NaN) - bend.centreLine[end].x / mmPerUnit)).toBeLessThan(step);
        expect(Math.abs((lines[i]?.vertices[end]?.y ?? NaN) - bend.centreLine[end].y / mmPerUnit)).toBeLessThan(step);
      }
    }
  });
});

describe('read by ezdxf', () => {
  it('has no audit finding, the form, the layouts and a view of the whole', async () => {
    const [read] = await readWithEzdxf(write('mm'));
    expect(read?.errors).toEqual([]);
    expect(read?.version).toBe('AC1021');
    expect(read?.layouts).toEqual(['Model', 'Layout1']);
    expect(read?.view).toHaveLength(1);
    const [x, y, height, aspect] = read?.view[0] ?? [NaN, NaN, NaN, NaN];
    expect([x, y]).toEqual([60, 10]);
    expect(height).toBeGreaterThan(20);
    expect(height * aspect).toBeGreaterThan(120);
  });

  it.each([['mm', 1, 4, 1], ['in', 25.4, 1, 0]] as const)('has the area and the extents in %s', async (unit, mmPerUnit, units, measurement) => {
    const [read] = await readWithEzdxf(write(unit));
    if (!read) throw new Error('ezdxf read nothing.');
    expect([read.units, read.measurement]).toEqual([units, measurement]);
    expect(read.entities.filter((e) => e.type === 'LWPOLYLINE').map((e) => e.closed)).toEqual([true, true, true]);
    expect(Math.abs(areaRead(read) * mmPerUnit ** 2 / blank.area - 1)).toBeLessThan(1e-8);
    const { minX, minY, maxX, maxY } = blank.bounds;
    for (const [had, wanted] of [[read.extMin, [minX, minY]], [read.extMax, [maxX, maxY]]] as const) {
      for (const i of [0, 1] as const) expect(Math.abs(had[i] * mmPerUnit - (wanted[i] ?? NaN))).toBeLessThan(1e-7);
    }
    // ezdxf's own box of all entities, its arcs in chords 0.1 µm deep.
    for (const i of [0, 1] as const) {
      expect(Math.abs(read.boxMin[i] - read.extMin[i])).toBeLessThan(2e-4);
      expect(Math.abs(read.boxMax[i] - read.extMax[i])).toBeLessThan(2e-4);
    }
  });

  it('has each opening with its own area', async () => {
    const [read] = await readWithEzdxf(write('mm'));
    const had = read?.entities.filter((e) => e.layer === 'CUT-OUTS').map((e) => e.area ?? NaN) ?? [];
    const wanted = blank.cutouts.map((c) => contourArea(c.contour));
    expect(had).toHaveLength(wanted.length);
    wanted.forEach((area, i) => expect(Math.abs((had[i] ?? NaN) / area - 1)).toBeLessThan(1e-9));
  });

  it('has the nicks cut out of the outline', async () => {
    const nicked = must(cutDrawing(blank, { bendLines: 'nicks', thickness: 1.6 }));
    const [read] = await readWithEzdxf(write('mm', nicked.drawing));
    expect(read?.entities.filter((e) => e.type === 'LINE')).toEqual([]);
    // Four vees 0.8 wide and 0.8 deep, by hand.
    expect(Math.abs(areaRead(read as ReadDxf) - (blank.area - 4 * 0.8 * 0.8 / 2))).toBeLessThan(1e-6);
  });

  it('reads a full-circle path as two half circles of the right area', async () => {
    const plate = roundPlate();
    const [read] = await readWithEzdxf(write('mm', must(cutDrawing(plate, { bendLines: 'none', thickness: 1 })).drawing));
    expect(read?.errors).toEqual([]);
    expect(read?.entities.map((e) => e.points?.map((p) => p[2]))).toEqual([[1, 1], [-1, -1]]);
    expect(Math.abs(areaRead(read as ReadDxf) / (Math.PI * (25 ** 2 - 4 ** 2)) - 1)).toBeLessThan(1e-9);
    expect(signedArea(plate.outline)).toBeCloseTo(Math.PI * 625, 9);
  });

  it('has layer names of every script', async () => {
    const layers = { outline: 'Außen-Ω', cutouts: 'Отверстия', bends: '曲げ 🔧' };
    const [read] = await readWithEzdxf(must(writeDxf(layered.drawing, { ...settings, layers })));
    expect(read?.errors).toEqual([]);
    expect([...new Set(read?.entities.map((e) => e.layer))]).toEqual(Object.values(layers));
  });

  it('would say so if a file could not be read', async () => {
    await expect(readWithEzdxf('no DXF')).rejects.toThrow(/readDxf\.py could not read the file/);
  });
});
