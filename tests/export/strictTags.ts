/**
 * A strict look at the tags of a DXF, written from the published DXF reference (AC1021) and sharing nothing with the writer.
 * Readers repair what they can while loading, so a file that opens may still be wrong; this one repairs nothing.
 */

interface Tag {
  readonly code: number;
  readonly value: string;
}

interface Rec {
  readonly type: string;
  readonly section: string;
  readonly table: string;
  readonly tags: readonly Tag[];
}

const SECTIONS = ['HEADER', 'CLASSES', 'TABLES', 'BLOCKS', 'ENTITIES', 'OBJECTS'];
const TABLES = ['VPORT', 'LTYPE', 'LAYER', 'STYLE', 'VIEW', 'UCS', 'APPID', 'DIMSTYLE', 'BLOCK_RECORD'];
const HEADER_WANTED = ['$ACADVER', '$EXTMIN', '$EXTMAX', '$INSUNITS', '$MEASUREMENT', '$HANDSEED', '$TILEMODE', '$INSBASE'];

/** Subclass markers of each record in order, and the codes that may and must stand under each marker. */
const SHAPES: Readonly<Record<string, readonly (readonly [marker: string, may: string, must: string])[]>> = {
  VPORT: [
    ['AcDbSymbolTableRecord', '', ''],
    ['AcDbViewportTableRecord', '2 70 10 20 11 21 12 22 13 23 14 24 15 25 16 26 36 17 27 37 40 41 42 43 44 50 51 71 72 73 74 75 76 77 78 281 65 146', '2 70 10 20 11 21 12 22 16 26 36 17 27 37 40 41 42 50 51'],
  ],
  LTYPE: [['AcDbSymbolTableRecord', '', ''], ['AcDbLinetypeTableRecord', '2 70 3 72 73 40 49 74', '2 70 3 72 73 40']],
  LAYER: [['AcDbSymbolTableRecord', '', ''], ['AcDbLayerTableRecord', '2 70 62 6 290 370 390 347', '2 70 62 6 390']],
  STYLE: [['AcDbSymbolTableRecord', '', ''], ['AcDbTextStyleTableRecord', '2 70 40 41 50 71 42 3 4', '2 70 40 41 50 71 42 3 4']],
  APPID: [['AcDbSymbolTableRecord', '', ''], ['AcDbRegAppTableRecord', '2 70', '2 70']],
  DIMSTYLE: [['AcDbSymbolTableRecord', '', ''], ['AcDbDimStyleTableRecord', '2 70', '2 70']],
  BLOCK_RECORD: [['AcDbSymbolTableRecord', '', ''], ['AcDbBlockTableRecord', '2 340 70 280 281', '2 340']],
  BLOCK: [['AcDbEntity', '8 67', '8'], ['AcDbBlockBegin', '2 70 10 20 30 3 1', '2 70 10 20 30 3']],
  ENDBLK: [['AcDbEntity', '8 67', '8'], ['AcDbBlockEnd', '', '']],
  LWPOLYLINE: [['AcDbEntity', '8 6 62 370 48 60', '8'], ['AcDbPolyline', '90 70 43 38 39 10 20 42', '90 70 10 20']],
  CIRCLE: [['AcDbEntity', '8 6 62 370 48 60', '8'], ['AcDbCircle', '10 20 30 40', '10 20 40']],
  LINE: [['AcDbEntity', '8 6 62 370 48 60', '8'], ['AcDbLine', '10 20 30 11 21 31', '10 20 11 21']],
  DICTIONARY: [['AcDbDictionary', '280 281 3 350', '281']],
  ACDBDICTIONARYWDFLT: [['AcDbDictionary', '281 3 350', '281'], ['AcDbDictionaryWithDefault', '340', '340']],
  ACDBPLACEHOLDER: [],
  LAYOUT: [
    ['AcDbPlotSettings', '1 2 4 6 40 41 42 43 44 45 46 47 48 49 140 141 142 143 70 72 73 74 7 75 76 77 78 147 148 149', '44 45 70'],
    ['AcDbLayout', '1 70 71 10 20 11 21 12 22 32 14 24 34 15 25 35 146 13 23 33 16 26 36 17 27 37 76 330', '1 71 14 24 15 25 330'],
  ],
};

const isReal = (c: number): boolean => (c >= 10 && c <= 59) || (c >= 110 && c <= 149) || (c >= 210 && c <= 239) || (c >= 460 && c <= 469);
const isWhole = (c: number): boolean => (c >= 60 && c <= 99) || (c >= 160 && c <= 179) || (c >= 270 && c <= 289) || (c >= 370 && c <= 389) || (c >= 400 && c <= 409) || (c >= 420 && c <= 429);
const isHandle = (c: number): boolean => c === 5 || c === 105 || (c >= 320 && c <= 369) || (c >= 390 && c <= 399);
const codes = (list: string): readonly number[] => (list === '' ? [] : list.split(' ').map(Number));

/** Reads the text into tags; what is wrong with lines and values goes to `found`. */
function read(text: string, found: string[]): readonly Tag[] {
  if (!text.endsWith('\r\n')) found.push('the file does not end in CRLF');
  if (/[^\r]\n|\r[^\n]/.test(text)) found.push('a line does not end in CRLF');
  const lines = text.replace(/\r?\n$/, '').split(/\r?\n/);
  if (lines.length % 2 !== 0) found.push('odd number of lines');
  const tags: Tag[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const head = lines[i] ?? '';
    const value = lines[i + 1] ?? '';
    const code = Number(head);
    if (!/^ *\d{1,4}$/.test(head)) found.push(`line ${i + 1}: "${head}" is no group code`);
    if (isReal(code) && !/^-?\d+\.\d+$/.test(value)) found.push(`line ${i + 2}: code ${code} has "${value}", not a plain real`);
    if (isReal(code) && /\.\d{13,}$/.test(value)) found.push(`line ${i + 2}: code ${code} has more than 12 places`);
    if (isWhole(code) && !/^-?\d+$/.test(value)) found.push(`line ${i + 2}: code ${code} has "${value}", not a whole number`);
    if (isHandle(code) && !/^(0|[1-9A-F][0-9A-F]*)$/.test(value)) found.push(`line ${i + 2}: code ${code} has "${value}", not a handle`);
    tags.push({ code, value });
  }
  return tags;
}

function split(tags: readonly Tag[], found: string[]): { readonly records: readonly Rec[]; readonly sections: readonly string[]; readonly header: readonly Tag[]; readonly tables: readonly string[] } {
  const records: Rec[] = [];
  const names: string[] = [];
  const tables: string[] = [];
  const header: Tag[] = [];
  let section = '';
  let table = '';
  let open: Tag[] | undefined;
  for (const [i, t] of tags.entries()) {
    const next = tags[i + 1]?.value ?? '';
    if (t.code !== 0) {
      if (section === 'HEADER' && open === undefined && !(tags[i - 1]?.value === 'SECTION' && t.code === 2)) header.push(t);
      open?.push(t);
      continue;
    }
    open = undefined;
    if (t.value === 'SECTION') names.push((section = next));
    else if (t.value === 'ENDSEC') section = '';
    else if (t.value === 'ENDTAB') table = '';
    else if (t.value === 'EOF') {
      if (i !== tags.length - 1 || section !== '') found.push('EOF is not the last tag, outside the sections');
    } else {
      if (t.value === 'TABLE') tables.push((table = next));
      if (section === '') found.push(`${t.value} stands outside the sections`);
      open = [];
      records.push({ type: t.value, section, table, tags: open });
    }
  }
  if (tags.at(-1)?.value !== 'EOF') found.push('EOF is missing');
  return { records, sections: names, header, tables };
}

const all = (r: Rec, code: number): readonly string[] => r.tags.filter((t) => t.code === code).map((t) => t.value);
const one = (r: Rec, code: number): string => all(r, code)[0] ?? '';
/** The owner is the first 330, before any subclass marker. */
const ownerOf = (r: Rec): string | undefined => {
  const marker = r.tags.findIndex((t) => t.code === 100);
  return r.tags.slice(0, marker < 0 ? undefined : marker).find((t) => t.code === 330)?.value;
};
const handleCode = (r: Rec): number => (r.type === 'DIMSTYLE' ? 105 : 5);

function checkShape(r: Rec, found: string[]): void {
  const shape = SHAPES[r.type];
  if (!shape) {
    found.push(`${r.type}: not a record this program should write`);
    return;
  }
  const starts = r.tags.flatMap((t, i) => (t.code === 100 ? [i] : []));
  const markers = starts.map((i) => r.tags[i]?.value);
  if (markers.join() !== shape.map(([m]) => m).join()) found.push(`${r.type}: subclass markers ${markers.join()}`);
  const before = r.tags.slice(0, starts[0]).map((t) => t.code);
  if (before.join() !== `${handleCode(r)},330`) found.push(`${r.type}: codes ${before.join()} before the first marker`);
  for (const [n, [marker, may, must]] of shape.entries()) {
    const here = r.tags.slice((starts[n] ?? 0) + 1, starts[n + 1]).map((t) => t.code);
    for (const code of here) if (!codes(may).includes(code)) found.push(`${r.type}: code ${code} under ${marker}`);
    for (const code of codes(must)) if (!here.includes(code)) found.push(`${r.type}: no code ${code} under ${marker}`);
  }
}

function checkPolyline(r: Rec, found: string[]): void {
  const x = all(r, 10);
  const y = all(r, 20);
  if (Number(one(r, 90)) !== x.length || x.length !== y.length) found.push(`LWPOLYLINE: says ${one(r, 90)} points, has ${x.length}`);
  if (x.length < 2) found.push('LWPOLYLINE: fewer than two points');
  const order = r.tags.slice(r.tags.findIndex((t) => t.code === 10)).map((t) => t.code);
  if (!/^(10,20,(42,)?)+$/.test(`${order.join()},`)) found.push('LWPOLYLINE: a point is not 10, 20 and perhaps 42');
  const closed = one(r, 70) === '1';
  for (let i = closed ? 0 : 1; i < x.length; i++) {
    const before = (i + x.length - 1) % x.length;
    if (x[i] === x[before] && y[i] === y[before]) found.push(`LWPOLYLINE: points ${before} and ${i} are the same`);
  }
  if (all(r, 42).some((b) => Math.abs(Number(b)) > 1 + 1e-9)) found.push('LWPOLYLINE: a bulge of more than half a turn');
}

function checkHeader(header: readonly Tag[], found: string[]): ReadonlyMap<string, readonly Tag[]> {
  const variables = new Map<string, Tag[]>();
  let current: Tag[] = [];
  for (const t of header) {
    if (t.code === 9) {
      if (variables.has(t.value)) found.push(`header: ${t.value} twice`);
      variables.set(t.value, (current = []));
    } else current.push(t);
  }
  if (header[0]?.value !== '$ACADVER') found.push('header: $ACADVER is not first');
  for (const name of HEADER_WANTED) if (!variables.has(name)) found.push(`header: no ${name}`);
  const first = (name: string): string | undefined => variables.get(name)?.[0]?.value;
  if (first('$ACADVER') !== 'AC1021') found.push(`header: $ACADVER ${first('$ACADVER')}`);
  const units = `${first('$INSUNITS')}/${first('$MEASUREMENT')}`;
  if (units !== '4/1' && units !== '1/0') found.push(`header: units ${units}`);
  const corner = (name: string): readonly number[] => variables.get(name)?.map((t) => Number(t.value)) ?? [];
  const [low, high] = [corner('$EXTMIN'), corner('$EXTMAX')];
  if (![0, 1].every((i) => (low[i] ?? NaN) < (high[i] ?? NaN))) found.push(`header: extents ${low.join()} to ${high.join()}`);
  return variables;
}

function checkPointers(records: readonly Rec[], header: ReadonlyMap<string, readonly Tag[]>, found: string[]): void {
  const byHandle = new Map<string, Rec>();
  for (const r of records) {
    const handles = all(r, handleCode(r));
    const handle = handles[0] ?? '';
    if (handles.length !== 1 || handle === '0') found.push(`${r.type}: ${handles.length} handles`);
    if (byHandle.has(handle)) found.push(`${r.type}: handle ${handle} is used twice`);
    byHandle.set(handle, r);
  }
  const highest = Math.max(...[...byHandle.keys()].map((h) => parseInt(h, 16)));
  if (!(parseInt(header.get('$HANDSEED')?.[0]?.value ?? '', 16) > highest)) found.push('header: $HANDSEED is not above every handle');
  const modelRecord = records.find((r) => r.type === 'BLOCK_RECORD' && one(r, 2) === '*Model_Space');
  let block: Rec | undefined;
  for (const r of records) {
    for (const t of r.tags) {
      if (![330, 340, 350, 390].includes(t.code) || (t.value === '0' && t.code === 330)) continue;
      if (!byHandle.has(t.value)) found.push(`${r.type}: code ${t.code} points at ${t.value}, which is not there`);
    }
    const owner = ownerOf(r);
    const ownerRecord = byHandle.get(owner ?? '');
    if (r.type === 'BLOCK') block = r;
    if (r.section === 'ENTITIES' && ownerRecord !== modelRecord) found.push(`${r.type}: owned by ${ownerRecord?.type ?? owner}, not by the model's BLOCK_RECORD`);
    if ((r.type === 'BLOCK' || r.type === 'ENDBLK') && (ownerRecord?.type !== 'BLOCK_RECORD' || one(ownerRecord, 2) !== (block && one(block, 2)))) found.push(`${r.type}: not owned by its BLOCK_RECORD`);
    if (r.section === 'TABLES' && r.type === 'TABLE' && owner !== '0') found.push(`TABLE ${r.table}: owner ${owner}`);
    if (r.section === 'TABLES' && r.type !== 'TABLE' && (ownerRecord?.type !== 'TABLE' || ownerRecord.table !== r.table || r.type !== r.table)) found.push(`${r.type}: not owned by its table`);
    if (r.type === 'LAYER' && byHandle.get(one(r, 390))?.type !== 'ACDBPLACEHOLDER') found.push(`LAYER ${one(r, 2)}: no plot style`);
    if (r.type === 'BLOCK_RECORD') {
      const layout = byHandle.get(one(r, 340));
      if (layout?.type !== 'LAYOUT' || all(layout, 330)[1] !== one(r, 5)) found.push(`BLOCK_RECORD ${one(r, 2)}: no layout that points back`);
    }
    if (r.section === 'OBJECTS' && owner !== '0') {
      const names = ownerRecord ? all(ownerRecord, 350) : [];
      if (!names.includes(one(r, 5))) found.push(`${r.type}: its owner does not list it`);
    }
  }
  const roots = records.filter((r) => r.section === 'OBJECTS' && ownerOf(r) === '0');
  const first = records.find((r) => r.section === 'OBJECTS');
  if (roots.length !== 1 || roots[0] !== first || first?.type !== 'DICTIONARY') found.push('objects: the root dictionary is not the first object, or not alone');
  for (const name of ['ACAD_GROUP', 'ACAD_LAYOUT']) if (first && !all(first, 3).includes(name)) found.push(`objects: no ${name}`);
}

function checkTables(records: readonly Rec[], found: string[]): void {
  for (const table of TABLES) {
    const head = records.find((r) => r.type === 'TABLE' && r.table === table);
    const names = records.filter((r) => r.section === 'TABLES' && r.table === table && r.type !== 'TABLE').map((r) => one(r, 2).toUpperCase());
    if (head && Number(one(head, 70)) !== names.length) found.push(`TABLE ${table}: says ${one(head, 70)} entries, has ${names.length}`);
    if (new Set(names).size !== names.length) found.push(`TABLE ${table}: a name stands twice`);
    const wanted: Record<string, readonly string[]> = {
      LTYPE: ['BYBLOCK', 'BYLAYER', 'CONTINUOUS'], LAYER: ['0'], VPORT: ['*ACTIVE'], STYLE: ['STANDARD'], APPID: ['ACAD'], DIMSTYLE: ['STANDARD'],
      BLOCK_RECORD: ['*MODEL_SPACE', '*PAPER_SPACE'],
    };
    for (const name of wanted[table] ?? []) if (!names.includes(name)) found.push(`TABLE ${table}: no ${name}`);
  }
  const layers = new Set(records.filter((r) => r.type === 'LAYER').map((r) => one(r, 2)));
  for (const r of records) {
    if (r.section === 'ENTITIES' && !layers.has(one(r, 8))) found.push(`${r.type}: layer "${one(r, 8)}" is not in the table`);
    if (r.type === 'LAYER' && /[<>/\\":;?*|=,`]/.test(one(r, 2))) found.push(`LAYER ${one(r, 2)}: a character that names may not have`);
  }
}

/** Everything that is wrong with the file, one sentence each; empty when it is clean. */
export function strictTags(text: string): readonly string[] {
  const found: string[] = [];
  const { records, sections, header, tables } = split(read(text, found), found);
  if (sections.join() !== SECTIONS.join()) found.push(`sections ${sections.join()}`);
  if (tables.join() !== TABLES.join()) found.push(`tables ${tables.join()}`);
  const variables = checkHeader(header, found);
  const bodied = records.filter((r) => r.section !== 'CLASSES' && r.section !== 'HEADER');
  for (const r of bodied) {
    if (r.type !== 'TABLE') checkShape(r, found);
    if (r.type === 'LWPOLYLINE') checkPolyline(r, found);
    if (r.type === 'CIRCLE' && !(Number(one(r, 40)) > 0)) found.push(`CIRCLE: radius ${one(r, 40)}`);
  }
  checkPointers(bodied, variables, found);
  checkTables(bodied, found);
  return found;
}
