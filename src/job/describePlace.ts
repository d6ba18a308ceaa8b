/** Where something stands in a job file: the field path and the same in words, for a reader with the file open. */
import { legLetter } from '../core/part/names';
import { shown } from '../core/units/refuse';

type Step = string | number;

/** One item of each list, as a person would call it. */
const ITEMS: { readonly [list: string]: string } = {
  parts: 'part',
  stocks: 'stock',
  sizes: 'size',
  cutouts: 'cut-out',
  rows: 'measured row',
};

/** `startBasis` as words: `start basis`. */
const inWords = (key: string): string => shown(key).replace(/([a-z])([A-Z])/g, (_, low: string, high: string) => `${low} ${high.toLowerCase()}`);

const own = (node: unknown, key: Step): unknown =>
  typeof node === 'object' && node !== null && Object.hasOwn(node, key) ? (node as { readonly [key: Step]: unknown })[key] : undefined;

const named = (node: unknown): string => {
  const name = own(node, 'name');
  return typeof name === 'string' && name.trim() !== '' ? ` "${shown(name)}"` : '';
};

/**
 * `parts.2.legs.0.startBasis (part 3 "Front strap", leg A "Foot", start basis)`. The document is looked at for names only;
 * it need not be a job.
 */
export function describePlace(document: unknown, path: readonly Step[]): string {
  if (path.length === 0) return 'the job';
  const words: string[] = [];
  let node = document;
  path.forEach((key, i) => {
    node = own(node, key);
    const list = path[i - 1];
    if (typeof key === 'number') {
      const item = list === 'legs' ? `leg ${legLetter(key)}` : `${ITEMS[String(list)] ?? 'item'} ${key + 1}`;
      words.push(`${item}${named(node)}`);
    } else if (typeof path[i + 1] !== 'number') words.push(inWords(key));
  });
  return `${path.map((key) => shown(String(key))).join('.')} (${words.join(', ')})`;
}
