/** Readers that no one here wrote, as functions. */
import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

/** Debian's own Python: another one may come first on the path and have no ezdxf. */
const PYTHON = '/usr/bin/python3';
const run = promisify(execFile);
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

async function readWith(script: string, texts: readonly string[], ending: string): Promise<unknown> {
  const folder = await mkdtemp(join(tmpdir(), 'cutting-file-'));
  try {
    const paths = texts.map((_, i) => join(folder, `${i}.${ending}`));
    await Promise.all(paths.map((path, i) => writeFile(path, texts[i] ?? '', 'utf8')));
    const { stdout } = await run(PYTHON, [here(script), ...paths], { maxBuffer: 1 << 28 });
    return JSON.parse(stdout);
  } catch (thrown) {
    const { stderr, message } = thrown as { stderr?: string; message: string };
    throw new Error(`${script} could not read the file with ${PYTHON}: ${stderr?.trim() || message}`, { cause: thrown });
  } finally {
    await rm(folder, { recursive: true });
  }
}

export interface ReadEntity {
  readonly type: string;
  readonly layer: string;
  readonly closed?: boolean;
  readonly points?: readonly (readonly [x: number, y: number, bulge: number])[];
  readonly area?: number;
  readonly centre?: readonly [number, number];
  readonly radius?: number;
  readonly from?: readonly [number, number];
  readonly to?: readonly [number, number];
}

export interface ReadDxf {
  readonly version: string;
  readonly errors: readonly string[];
  readonly units: number;
  readonly measurement: number;
  readonly extMin: readonly [number, number];
  readonly extMax: readonly [number, number];
  readonly boxMin: readonly [number, number];
  readonly boxMax: readonly [number, number];
  readonly layers: readonly string[];
  readonly layouts: readonly string[];
  readonly view: readonly (readonly [x: number, y: number, height: number, aspect: number])[];
  readonly entities: readonly ReadEntity[];
}

/** ezdxf, not the recovering reader, with its audit. Fails with a plain sentence where ezdxf is missing. */
export const readWithEzdxf = async (...texts: readonly string[]): Promise<readonly ReadDxf[]> =>
  (await readWith('readDxf.py', texts, 'dxf')) as readonly ReadDxf[];

export interface ReadElement {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

/** Python's XML parser: refuses what is not well formed. */
export const readWithStrictXml = async (text: string): Promise<readonly ReadElement[]> =>
  (await readWith('readSvg.py', [text], 'svg')) as readonly ReadElement[];
