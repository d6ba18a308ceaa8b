/** Poppler as a reader of PDFs that no one here wrote: vector content, fonts, words and ink. mm, y upwards from the foot of the page. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Bounds, Point } from '../../../src/core/geometry/types';

const MM = 25.4 / 72;

export interface ReadPath {
  /** mm; 0 for what is only filled. */
  readonly width: number;
  readonly dashed: boolean;
  readonly closed: boolean;
  /** Pieces, each from where the pen stood: a line or a Bézier curve. */
  readonly pieces: readonly (readonly Point[])[];
}

export interface ReadWord extends Bounds {
  readonly text: string;
}

/** Writes the bytes to a file of their own while `use` reads it. */
function withFile<Answer>(bytes: Uint8Array, use: (path: string) => Answer): Answer {
  const folder = mkdtempSync(join(tmpdir(), 'pages-'));
  try {
    const path = join(folder, 'pages.pdf');
    writeFileSync(path, bytes);
    return use(path);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const run = (command: string, ...args: readonly string[]): string => execFileSync(command, args, { encoding: 'utf8', maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'pipe'] });

/** All paths of a page, as `pdftocairo` finds them. The flags keep the size: without them it fits the page. */
export function readPaths(bytes: Uint8Array, page: number): readonly ReadPath[] {
  const svg = withFile(bytes, (path) => run('pdftocairo', '-svg', '-noshrink', '-nocenter', '-paper', 'match', '-f', String(page), '-l', String(page), path, '-'));
  const height = Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(svg)?.[1]);
  const drawn = svg.replace(/<defs>[^]*?<\/defs>/g, '');
  return [...drawn.matchAll(/<path style="([^"]*)" d="([^"]*)"(?: transform="matrix\(([^)]*)\)")?/g)].map(([, style = '', d = '', matrix]) => {
    const [a = 1, b = 0, c = 0, e = 1, f = 0, g = 0] = matrix?.split(',').map(Number) ?? [];
    const at = (x: number, y: number): Point => ({ x: (a * x + c * y + f) * MM, y: (height - (b * x + e * y + g)) * MM });
    const pieces: Point[][] = [];
    let pen: Point = { x: NaN, y: NaN };
    for (const [, letter, list = ''] of d.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
      const n = list.trim().split(/[\s,]+/).filter((s) => s !== '').map(Number);
      const points: Point[] = [];
      for (let i = 0; i + 1 < n.length; i += 2) points.push(at(n[i] ?? NaN, n[i + 1] ?? NaN));
      if (letter === 'L' || letter === 'C') pieces.push([pen, ...points]);
      pen = points.at(-1) ?? pen;
    }
    const stroke = /stroke-width:([\d.]+)/.exec(style);
    return { width: stroke && !/stroke:none/.test(style) ? Number(stroke[1]) * MM : 0, dashed: style.includes('stroke-dasharray'), closed: d.includes('Z'), pieces };
  });
}

/** A point of a piece at a share of the way. */
export function on(piece: readonly Point[], share: number): Point {
  let points = piece;
  while (points.length > 1) points = points.slice(1).map((p, i) => ({ x: (points[i]?.x ?? NaN) * (1 - share) + p.x * share, y: (points[i]?.y ?? NaN) * (1 - share) + p.y * share }));
  return points[0] ?? { x: NaN, y: NaN };
}

/** What a path covers, by 64 points to a curve. */
export function boundsOf(pieces: readonly (readonly Point[])[]): Bounds {
  let b: Bounds = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const piece of pieces) {
    for (let i = 0; i <= (piece.length > 2 ? 64 : 1); i++) {
      const p = on(piece, piece.length > 2 ? i / 64 : i);
      b = { minX: Math.min(b.minX, p.x), minY: Math.min(b.minY, p.y), maxX: Math.max(b.maxX, p.x), maxY: Math.max(b.maxY, p.y) };
    }
  }
  return b;
}

/** Words of a page with their boxes. */
export function readWords(bytes: Uint8Array, page: number): readonly ReadWord[] {
  const text = withFile(bytes, (path) => run('pdftotext', '-bbox', '-f', String(page), '-l', String(page), path, '-'));
  const height = Number(/<page width="[\d.]+" height="([\d.]+)"/.exec(text)?.[1]);
  return [...text.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g)].map(([, x0, y0, x1, y1, word = '']) => ({
    minX: Number(x0) * MM,
    maxX: Number(x1) * MM,
    minY: (height - Number(y1)) * MM,
    maxY: (height - Number(y0)) * MM,
    text: word,
  }));
}

export const readText = (bytes: Uint8Array): string => withFile(bytes, (path) => run('pdftotext', '-raw', path, '-'));

/** Name, embedded, subset, with its letters told: one row a font. */
export function readFonts(bytes: Uint8Array): readonly { readonly name: string; readonly embedded: boolean; readonly subset: boolean; readonly unicode: boolean }[] {
  const rows = withFile(bytes, (path) => run('pdffonts', path)).split('\n').slice(2).filter((row) => row.trim() !== '');
  return rows.map((row) => {
    const [, name = '', embedded, subset, unicode] = /^(\S+)\s.*?\s(yes|no)\s+(yes|no)\s+(yes|no)\s/.exec(row) ?? [];
    return { name, embedded: embedded === 'yes', subset: subset === 'yes', unicode: unicode === 'yes' };
  });
}

export function readSizes(bytes: Uint8Array): readonly (readonly [width: number, height: number])[] {
  return [...withFile(bytes, (path) => run('pdfinfo', '-l', '999', path)).matchAll(/Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts/g)].map(([, w, h]) => [Number(w) * MM, Number(h) * MM]);
}

/** What is inked on a page, from a picture of it at 5 dots to the mm. */
export function readInk(bytes: Uint8Array, page: number): Bounds {
  const DOTS = 5;
  return withFile(bytes, (path) => {
    const picture = `${path}.page`;
    run('pdftoppm', '-gray', '-singlefile', '-r', String(DOTS * 25.4), '-f', String(page), '-l', String(page), path, picture);
    const raw = readFileSync(`${picture}.pgm`);
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(raw.subarray(0, 40).toString('latin1'));
    const [width, height] = [Number(head?.[1]), Number(head?.[2])];
    const start = head?.[0].length ?? 0;
    let b: Bounds = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        if ((raw[start + y * width + x] ?? 255) < 250) b = { minX: Math.min(b.minX, x), maxX: Math.max(b.maxX, x + 1), minY: Math.min(b.minY, height - y - 1), maxY: Math.max(b.maxY, height - y) };
      }
    }
    return { minX: b.minX / DOTS, minY: b.minY / DOTS, maxX: b.maxX / DOTS, maxY: b.maxY / DOTS };
  });
}
