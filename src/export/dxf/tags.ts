/** DXF is a run of tags: a group code on one line, its value on the next. Records begin at each code 0. */
import { formatReal } from '../formatReal';
import { PLACES } from './shapes';

export interface Tag {
  readonly code: number;
  readonly value: string | number;
}

export const tag = (code: number, value: string | number): Tag => ({ code, value });

/** One record: an entity, a table, an entry of a table, an object. Handles are names until `numbered` gives them their figures. */
export interface DxfRecord {
  readonly type: string;
  readonly handle: string;
  readonly owner: string;
  /** Everything after the owner. */
  readonly body: readonly Tag[];
}

/** A bulge is a ratio: a unit in its last place moves the middle of a 100 m chord by less than a nanometre's tenth. */
const BULGE_PLACES = 12;

/** Group codes that hold real numbers. Source: the published DXF reference, group code value types. */
export const isReal = (code: number): boolean =>
  (code >= 10 && code <= 59) || (code >= 110 && code <= 149) || (code >= 210 && code <= 239) || (code >= 460 && code <= 469);

export function parseTags(text: string): readonly Tag[] {
  const lines = text.split('\n');
  const tags: Tag[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const code = Number(lines[i]);
    const value = lines[i + 1] ?? '';
    tags.push(tag(code, isReal(code) ? Number(value) : value));
  }
  return tags;
}

export function formatTag({ code, value }: Tag, bulges = false): string {
  const text = typeof value === 'number' && isReal(code) ? formatReal(value, bulges && code === 42 ? BULGE_PLACES : PLACES) : String(value);
  return `${String(code).padStart(3)}\r\n${text}\r\n`;
}

/** The records of each section by its name, with what stands before the first record (header variables) left out. */
export function sections(tags: readonly Tag[]): ReadonlyMap<string, readonly (readonly Tag[])[]> {
  const found = new Map<string, (readonly Tag[])[]>();
  let record: Tag[] = [];
  let section: (readonly Tag[])[] = [];
  for (const [i, t] of tags.entries()) {
    if (t.code !== 0) {
      record.push(t);
      continue;
    }
    record = [t];
    if (t.value === 'SECTION') {
      section = [];
      found.set(String(tags[i + 1]?.value), section);
    } else {
      section.push(record);
    }
  }
  return found;
}

/** Tags of a raw record as a record of ours. */
export function asRecord(tags: readonly Tag[]): DxfRecord {
  const first = (code: number): string => String(tags.find((t) => t.code === code)?.value ?? '');
  const handle = tags.findIndex((t) => t.code === 5);
  const owner = tags.findIndex((t) => t.code === 330);
  return {
    type: first(0),
    handle: first(5),
    owner: first(330),
    body: tags.filter((_, i) => i !== 0 && i !== handle && i !== owner),
  };
}
