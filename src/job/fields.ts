/**
 * Paths to the fields of a job: keys joined by dots, where an item of a list goes by its id (or its index if it has none):
 * `parts.strap.legs.foot.length`, `stocks.brass.rule.k`. A path stays good when items are moved.
 */
import type { Job } from './schema';

type Tree = { readonly [key: string]: unknown };

function step(node: unknown, key: string): { readonly at: string | number; readonly value: unknown } | undefined {
  if (Array.isArray(node)) {
    const byId = node.findIndex((item: unknown) => (item as { id?: unknown } | null)?.id === key);
    const at = byId >= 0 ? byId : /^\d+$/.test(key) ? Number(key) : -1;
    return at >= 0 && at < node.length ? { at, value: node[at] } : undefined;
  }
  if (typeof node === 'object' && node !== null && Object.hasOwn(node, key)) return { at: key, value: (node as Tree)[key] };
  return undefined;
}

/** The value at a path, or undefined where the path leads nowhere. */
export function readField(job: Job, path: string): unknown {
  let node: unknown = job;
  for (const key of path.split('.')) {
    const next = step(node, key);
    if (!next) return undefined;
    node = next.value;
  }
  return node;
}

function write(node: unknown, keys: readonly string[], value: unknown): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  const next = step(node, key);
  if (!next) return node;
  const child = write(next.value, rest, value);
  if (child === next.value) return node;
  if (Array.isArray(node)) return node.map((item: unknown, i) => (i === next.at ? child : item));
  return { ...(node as Tree), [next.at]: child };
}

/** The job with the value at a path replaced; the same job where the path leads nowhere or nothing changes. */
export function writeField(job: Job, path: string, value: unknown): Job {
  return write(job, path.split('.'), value) as Job;
}
