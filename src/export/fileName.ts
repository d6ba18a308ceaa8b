/** Names of files, safe on every system the file may be carried to. */

export interface FileSubject {
  readonly part: string;
  readonly stock?: string;
  readonly quantity?: number;
  /** What of it the file holds, where there are several: `template`. */
  readonly what?: string;
}

/** Bytes of UTF-8, ending included. Most systems take 255; the rest is left for a bracketed number and a longer folder path. */
const MOST_BYTES = 180;
/** Each piece gets its share, so that a long part name does not push out the stock and the quantity. */
const PIECE_BYTES = 80;

/** Device names that one widespread system keeps for itself, with any ending (from memory). */
const RESERVED = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$|clock\$)$/i;

const bytes = (text: string): number => new TextEncoder().encode(text).length;

/** The beginning of a text that fits, cut between characters as a reader sees them. */
function fitting(text: string, most: number): string {
  if (bytes(text) <= most) return text;
  let [kept, used] = ['', 0];
  for (const { segment } of new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)) {
    used += bytes(segment);
    if (used > most) break;
    kept += segment;
  }
  return kept;
}

/** No control or direction characters (they can hide an ending), no halves of a pair, nothing that a system keeps for itself. */
function cleaned(text: string): string {
  return text
    .normalize('NFC')
    .replace(/\p{Cs}/gu, '')
    // oxlint-disable-next-line no-control-regex
    .replace(/[\u0000-\u001F\u007F-\u009F\u2028\u2029]+/g, ' ')
    .replace(/[\u061C\u200B\u200E\u200F\u202A-\u202E\u2060-\u2069\uFEFF]/g, '')
    .replace(/["'`‘’“”]/g, '')
    .replace(/[/\\:|]/g, '-')
    .replace(/[<>?*]/g, '')
    .replace(/\s+/g, ' ')
    .replace(/^[\s.-]+|[\s.-]+$/g, '');
}

const piece = (text: string): string => fitting(cleaned(text), PIECE_BYTES).replace(/[\s.-]+$/, '');

/** Two names that a system without regard to capitals would take for one have the same key. */
const key = (name: string): string => name.normalize('NFKC').toUpperCase().toLowerCase();

/**
 * A file's name by part, stock and quantity: `Front strap - brass 1.6 - 12 off.dxf`.
 * Letters of every script stay; slashes, quotes, control characters, trailing dots and device names do not. A part without a
 * name that can be written is called `part`; a quantity that is no whole number above 0 is left out.
 * @param extension without its dot, such as `dxf`
 */
export function fileName(subject: FileSubject, extension: string): string {
  const { quantity } = subject;
  const off = quantity !== undefined && Number.isSafeInteger(quantity) && quantity > 0 ? `${quantity} off` : '';
  const joined = [piece(subject.part) || 'part', piece(subject.stock ?? ''), off, piece(subject.what ?? '')].filter((p) => p !== '').join(' - ');
  const safe = RESERVED.test((joined.split('.')[0] ?? '').trim()) ? `part ${joined}` : joined;
  return `${fitting(safe, MOST_BYTES)}.${extension}`;
}

/**
 * The names made different from each other, in their order: the second of a kind gets ` (2)` before its ending, and so on.
 * Capitals make no difference, since many systems ignore them.
 */
export function distinctNames(names: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return names.map((name) => {
    const dot = name.lastIndexOf('.');
    const [stem, ending] = dot > 0 ? [name.slice(0, dot), name.slice(dot)] : [name, ''];
    let free = name;
    for (let n = 2; taken.has(key(free)); n++) free = `${stem} (${n})${ending}`;
    taken.add(key(free));
    return free;
  });
}
