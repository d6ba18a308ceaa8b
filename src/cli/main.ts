/** `npm run --silent make -- JOB.json [MORE.json …] --out DIR`: the same core as on screen, job files in, cut files and papers out. */
import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, join } from 'node:path';
import { paperFile } from '../export/paperFiles';
import { partFileStems, partFiles } from '../export/partFiles';
import { partReport } from '../export/report';
import { openJob } from '../job/openJob';
import { LONGEST_FILE } from '../job/limits';
import { workOut, type WorkedOut } from '../job/workOut';
import type { Job } from '../job/schema';
import type { PdfFonts } from '../export/pdf/pdfFonts';
import { comparePart, strangers } from './compareFiles';
import { readArguments, type Wanted } from './readArguments';

interface JobFile {
  readonly file: string;
  readonly job: Job | undefined;
  readonly errors: readonly string[];
}

/** Reads and checks one job file; whatever goes wrong becomes sentences. */
function readJobFile(path: string): JobFile {
  const file = basename(path);
  try {
    const { size } = statSync(path);
    if (size > LONGEST_FILE) return { file, job: undefined, errors: [`The file is ${Math.round(size / 1e6)} MB. A job of more than ${LONGEST_FILE / 1e6} MB is not opened.`] };
    const opened = openJob(readFileSync(path, 'utf8'));
    return opened.ok ? { file, job: opened.job, errors: [] } : { file, job: undefined, errors: opened.faults.map((f) => `${f.where}: ${f.says}`) };
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code;
    const why = { ENOENT: 'There is no such file.', EISDIR: 'This is a folder, not a job file.', EACCES: 'The file may not be read.' }[code ?? ''];
    return { file, job: undefined, errors: [why ?? `The file could not be read (${code ?? String(cause)}).`] };
  }
}

interface Subject {
  readonly job: Job;
  readonly partId: string;
  readonly worked: WorkedOut;
}

/** The faces of the PDFs, from the package that has them. */
function readFonts(): PdfFonts {
  const { resolve } = createRequire(import.meta.url);
  const face = (name: string): Uint8Array => new Uint8Array(readFileSync(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
  return { regular: face('DejaVuSansCondensed'), bold: face('DejaVuSansCondensed-Bold') };
}

/** Papers of a part by their name in the report, and what stands behind the part's name in the file's. */
const PAPERS = [
  ['template', 'template', 'template'],
  ['shopSheet', 'sheet', 'shop sheet'],
] as const;

/** The day where the command runs, `2026-11-05`. */
function today(): string {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Writes the parts' files and the report; returns every sentence that went wrong. */
function make({ files: paths, out, paper, date, compare }: Wanted): readonly string[] {
  const said: string[] = [];
  const fonts = readFonts();
  const jobs = paths.map(readJobFile);
  const subjects = jobs.map(({ job }): Subject[] => (job?.parts ?? []).map((part) => ({ job: job as Job, partId: part.id, worked: workOut(job as Job, part.id) })));
  const stems = partFileStems(subjects.flat().map(({ job, partId, worked }) => ({ job, partId, quantity: worked.resolved.quantity })));
  let next = 0;
  mkdirSync(out, { recursive: true });
  const report = jobs.map(({ file, job, errors }, j) => {
    for (const error of errors) said.push(`${file}: ${error}`);
    for (const id of job && compare !== undefined ? strangers(job, compare) : []) said.push(`${file}: there is no stock with the id ${id} to compare with.`);
    const parts = (subjects[j] ?? []).map(({ partId, worked }) => {
      const stem = stems[next++] ?? partId;
      const written = partFiles(job as Job, partId, worked);
      const compared = compare === undefined ? undefined : comparePart(job as Job, partId, compare);
      if (compared) writeFileSync(join(out, `${stem} - compare.csv`), compared.csv);
      const told = { ...partReport(job as Job, partId, worked), ...(compared ? { compare: { file: `${stem} - compare.csv`, ...compared.report } } : {}) };
      if (!written.ok) {
        for (const reason of written.reasons) said.push(`${file}, ${told.name || partId}: ${reason}`);
        return { ...told, errors: written.reasons, files: null };
      }
      writeFileSync(join(out, `${stem}.dxf`), written.dxf);
      writeFileSync(join(out, `${stem}.svg`), written.svg);
      const papers = PAPERS.map(([key, kind, words]) => {
        const title = `${stem} - ${words}`;
        const pdf = paperFile(job as Job, partId, worked, kind, { paper, date, fonts, title });
        if (pdf.ok) writeFileSync(join(out, `${title}.pdf`), pdf.value);
        else said.push(`${file}, ${told.name || partId}: no ${words} was written. ${pdf.problem.says}`);
        return [key, pdf.ok ? `${title}.pdf` : null];
      });
      return { ...told, files: { dxf: `${stem}.dxf`, svg: `${stem}.svg`, ...Object.fromEntries(papers) } };
    });
    return { file, name: job?.name ?? null, errors, parts };
  });
  writeFileSync(join(out, 'report.json'), `${JSON.stringify({ format: 'bendwright report', version: 1, jobs: report }, null, 2)}\n`);
  return said;
}

const asked = readArguments(process.argv.slice(2), today());
if (!asked.ok) {
  console.error(asked.says);
  process.exitCode = 1;
} else {
  try {
    const said = make(asked);
    for (const sentence of said) console.error(sentence);
    process.exitCode = said.length > 0 ? 1 : 0;
  } catch (cause) {
    console.error(`Nothing more could be written to ${asked.out}: ${(cause as Error).message}`);
    process.exitCode = 1;
  }
}
