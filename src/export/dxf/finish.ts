/**
 * Makes a file out of what dxf-writer writes. Its own text opens in forgiving readers only: common codes stand behind the wrong
 * subclass marker, entities belong to the block instead of its record, there are no layouts, the view is off, handles differ
 * from call to call. Everything here is rebuilt from its tags.
 */
import type { Bounds } from '../../core/geometry/types';
import { header } from './header';
import type { DxfLayer } from './layers';
import { CLASSES, finishedObjects } from './objects';
import { standIn } from './rawDxf';
import { finishedTables } from './tables';
import type { DxfTable } from './tables';
import { asRecord, formatTag, parseTags, sections, tag } from './tags';
import type { DxfRecord, Tag } from './tags';

/** Codes that any entity may have; they stand under AcDbEntity, before the entity's own marker. */
const COMMON = new Set([6, 8, 48, 60, 62, 370, 420]);

/** Codes whose value is the handle of another record. */
const POINTERS = new Set([330, 340, 350, 390]);

const nameIn = (record: DxfRecord): string => String(record.body.find((t) => t.code === 2)?.value ?? '');

function tablesOf(records: readonly (readonly Tag[])[]): ReadonlyMap<string, DxfTable> {
  const tables = new Map<string, DxfTable>();
  let current: DxfTable | undefined;
  for (const record of records.map(asRecord)) {
    if (record.type === 'TABLE') current = { name: nameIn(record), head: record, entries: [] };
    else if (current && record.type !== 'ENDTAB') current = { ...current, entries: [...current.entries, record] };
    if (current) tables.set(current.name, current);
  }
  return tables;
}

/** Common codes behind AcDbEntity, in front of the entity's own marker and codes. */
function commonUp(record: DxfRecord, layerOf: (raw: string) => string, owner: string): DxfRecord {
  const common = record.body.filter((t) => COMMON.has(t.code)).map((t) => (t.code === 8 ? tag(8, layerOf(String(t.value))) : t));
  const [entity, ...own] = record.body.filter((t) => !COMMON.has(t.code));
  return { ...record, owner, body: entity ? [entity, ...common, ...own] : common };
}

/** Block ends and beginnings belong to the block record and stand on layer 0. */
function finishedBlocks(records: readonly DxfRecord[], blockRecord: (block: string) => string): readonly DxfRecord[] {
  let block = '';
  return records.map((record) => {
    if (record.type === 'BLOCK') block = nameIn(record);
    const [entity, ...own] = record.body;
    return { ...record, owner: blockRecord(block), body: entity ? [entity, tag(8, '0'), ...own] : [tag(8, '0')] };
  });
}

/** Handles from 1 in the order of the file, and every pointer turned with them. A pointer to nothing is a fault of this program. */
function numberer(records: readonly DxfRecord[]) {
  const figures = new Map<string, string>([['0', '0']]);
  for (const [i, { handle }] of records.entries()) {
    if (figures.has(handle)) throw new Error(`Two DXF records share the handle ${handle}`);
    figures.set(handle, (i + 1).toString(16).toUpperCase());
  }
  const figure = (handle: string): string => {
    const found = figures.get(handle);
    if (found === undefined) throw new Error(`A DXF record points at ${handle}, which is not in the file`);
    return found;
  };
  const write = (record: DxfRecord, isTable = false): string => {
    const { type, handle, owner, body } = record;
    const start = [tag(0, isTable ? 'TABLE' : type), ...(isTable ? [tag(2, type)] : [])];
    const own = [tag(type === 'DIMSTYLE' && !isTable ? 105 : 5, figure(handle)), tag(330, figure(owner))];
    const rest = body.map((t) => (POINTERS.has(t.code) ? tag(t.code, figure(String(t.value))) : t));
    return [...start, ...own, ...rest].map((t) => formatTag(t, type === 'LWPOLYLINE')).join('');
  };
  return { write, next: (records.length + 1).toString(16).toUpperCase() };
}

/**
 * @param raw text of dxf-writer, made by `rawDxf` from checked shapes
 * @param extents of all shapes, in the file's unit
 * @returns the whole file: UTF-8 text, CRLF, same bytes for the same shapes
 */
export function finish(raw: string, layers: readonly DxfLayer[], extents: Bounds, unit: 'mm' | 'in'): string {
  const parts = sections(parseTags(raw));
  const part = (name: string): readonly DxfRecord[] => (parts.get(name) ?? []).filter((r) => r[0]?.value !== 'ENDSEC').map(asRecord);
  const tables = finishedTables(tablesOf(parts.get('TABLES')?.filter((r) => r[0]?.value !== 'ENDSEC') ?? []), extents, layers);
  const blockRecords = new Map(tables.find((t) => t.name === 'BLOCK_RECORD')?.entries.map((r) => [nameIn(r), r.handle]));
  const blockRecord = (block: string): string => blockRecords.get(block) ?? `block record of ${block}`;
  const layerNames = new Map(layers.map((layer, i) => [standIn(i), layer.name]));
  const layerOf = (name: string): string => layerNames.get(name) ?? name;

  const blocks = finishedBlocks(part('BLOCKS'), blockRecord);
  const entities = part('ENTITIES').map((record) => commonUp(record, layerOf, blockRecord('*Model_Space')));
  const [root, groups] = part('OBJECTS');
  const objects = finishedObjects(root?.handle ?? '', groups?.handle ?? '', blockRecord, extents);

  const { write, next } = numberer([...tables.flatMap((t) => [t.head, ...t.entries]), ...blocks, ...entities, ...objects]);
  const end = (name: string): string => formatTag(tag(0, name));
  const section = (name: string, content: string): string => formatTag(tag(0, 'SECTION')) + formatTag(tag(2, name)) + content + end('ENDSEC');
  const join = (records: readonly DxfRecord[]): string => records.map((r) => write(r)).join('');
  const tagsOf = (tags: readonly Tag[]): string => tags.map((t) => formatTag(t)).join('');
  return [
    section('HEADER', tagsOf(header(extents, unit, next))),
    section('CLASSES', tagsOf(CLASSES.flat())),
    section('TABLES', tables.map((t) => write({ ...t.head, type: t.name }, true) + join(t.entries) + end('ENDTAB')).join('')),
    section('BLOCKS', join(blocks)),
    section('ENTITIES', join(entities)),
    section('OBJECTS', join(objects)),
    end('EOF'),
  ].join('');
}
