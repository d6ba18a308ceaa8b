import type { Bounds } from '../../core/geometry/types';
import { LAYOUTS, PLOT_STYLE } from './objects';
import { standIn } from './rawDxf';
import type { DxfLayer } from './layers';
import { tag } from './tags';
import type { DxfRecord, Tag } from './tags';

export interface DxfTable {
  readonly name: string;
  readonly head: DxfRecord;
  readonly entries: readonly DxfRecord[];
}

/** Order in which readers expect the tables. */
const ORDER = ['VPORT', 'LTYPE', 'LAYER', 'STYLE', 'VIEW', 'UCS', 'APPID', 'DIMSTYLE', 'BLOCK_RECORD'] as const;

/** The line types that every file must have; dxf-writer's dashes and dots are not used. */
const LINE_TYPES: Readonly<Record<string, string>> = { BYBLOCK: 'ByBlock', BYLAYER: 'ByLayer', CONTINUOUS: 'Continuous' };

const named = (record: DxfRecord): string => String(record.body.find((t) => t.code === 2)?.value ?? '');
const markers = (record: DxfRecord): readonly Tag[] => record.body.filter((t) => t.code === 100);
const rebuilt = (record: DxfRecord, values: readonly Tag[]): DxfRecord => ({ ...record, body: [...markers(record), ...values] });

/** The view that the drawing opens on: all of it, with a tenth of the height as margin. */
function viewport(record: DxfRecord, extents: Bounds): DxfRecord {
  const width = Math.max(extents.maxX - extents.minX, 1e-3);
  const height = Math.max(extents.maxY - extents.minY, 1e-3);
  const aspect = 1.5;
  const values: readonly (readonly [number, number])[] = [
    [70, 0], [10, 0], [20, 0], [11, 1], [21, 1],
    [12, (extents.minX + extents.maxX) / 2], [22, (extents.minY + extents.maxY) / 2],
    [13, 0], [23, 0], [14, 10], [24, 10], [15, 10], [25, 10],
    [16, 0], [26, 0], [36, 1], [17, 0], [27, 0], [37, 0],
    [40, 1.1 * Math.max(height, width / aspect)], [41, aspect], [42, 50], [43, 0], [44, 0], [50, 0], [51, 0],
    [71, 0], [72, 1000], [73, 1], [74, 3], [75, 0], [76, 0], [77, 0], [78, 0], [281, 0], [65, 0], [146, 0],
  ];
  return rebuilt(record, [tag(2, '*Active'), ...values.map(([code, value]) => tag(code, value))]);
}

function lineTypes(entries: readonly DxfRecord[]): readonly DxfRecord[] {
  return entries.flatMap((record) => {
    const name = LINE_TYPES[named(record).toUpperCase()];
    return name ? [rebuilt(record, [tag(2, name), tag(70, 0), tag(3, ''), tag(72, 65), tag(73, 0), tag(40, 0)])] : [];
  });
}

/** Layer 0, which every file must have, and the drawing's own under their real names; no second 0 where a layer is called so. */
function layerEntries(entries: readonly DxfRecord[], layers: readonly DxfLayer[]): readonly DxfRecord[] {
  return entries.flatMap((record) => {
    const raw = named(record);
    const layer = raw === '0' ? { name: '0', colour: 7 } : layers.find((_, i) => standIn(i) === raw);
    if (!layer || (raw !== '0' && layer.name === '0')) return [];
    return [rebuilt(record, [tag(2, layer.name), tag(70, 0), tag(62, layer.colour), tag(6, 'Continuous'), tag(370, -3), tag(390, PLOT_STYLE)])];
  });
}

function blockRecords(entries: readonly DxfRecord[]): readonly DxfRecord[] {
  return entries.flatMap((record) => {
    const layout = LAYOUTS.find((l) => l.block === named(record));
    return layout ? [rebuilt(record, [tag(2, layout.block), tag(340, layout.handle), tag(70, 0), tag(280, 1), tag(281, 0)])] : [];
  });
}

/** Dimension style with every value left at its default; the reference wants one called Standard. */
const standardDimensions = (owner: string): DxfRecord => ({
  type: 'DIMSTYLE',
  handle: 'dimstyle:standard',
  owner,
  body: [tag(100, 'AcDbSymbolTableRecord'), tag(100, 'AcDbDimStyleTableRecord'), tag(2, 'Standard'), tag(70, 0)],
});

function entriesOf(table: DxfTable, extents: Bounds, layers: readonly DxfLayer[]): readonly DxfRecord[] {
  switch (table.name) {
    case 'VPORT':
      return table.entries.map((record) => viewport(record, extents));
    case 'LTYPE':
      return lineTypes(table.entries);
    case 'LAYER':
      return layerEntries(table.entries, layers);
    case 'STYLE':
      return table.entries.map((record) => rebuilt(record, [tag(2, 'Standard'), ...record.body.filter((t) => t.code !== 100 && t.code !== 2)]));
    case 'DIMSTYLE':
      return [standardDimensions(table.head.handle)];
    case 'BLOCK_RECORD':
      return blockRecords(table.entries);
    default:
      return table.entries;
  }
}

/** The tables made whole, in order, each with its true count. */
export function finishedTables(raw: ReadonlyMap<string, DxfTable>, extents: Bounds, layers: readonly DxfLayer[]): readonly DxfTable[] {
  return ORDER.flatMap((name) => {
    const table = raw.get(name);
    if (!table) return [];
    const entries = entriesOf(table, extents, layers);
    const body = [...table.head.body.filter((t) => t.code === 100 && t.value === 'AcDbSymbolTable'), tag(70, entries.length)];
    const dimensions = name === 'DIMSTYLE' ? [tag(100, 'AcDbDimStyleTable'), tag(71, 0)] : [];
    return [{ name, head: { ...table.head, body: [...body, ...dimensions] }, entries }];
  });
}
