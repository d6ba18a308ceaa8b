import { printedDay } from '../drawing/papers/printedDay';
import { PAPER_SIZES, type PaperName } from '../drawing/template/paperSizes';

export interface Wanted {
  readonly files: readonly string[];
  readonly out: string;
  readonly paper: PaperName;
  /** `2026-11-05` */
  readonly date: string;
  /** Ids of stocks with commas between them, `all`, or undefined for no comparison. */
  readonly compare: string | undefined;
}

export type Asked = ({ readonly ok: true } & Wanted) | { readonly ok: false; readonly says: string };

const USAGE = 'Use it so: npm run --silent make -- JOB.json [MORE.json …] --out DIR [--paper A4] [--date 2026-11-05] [--compare STOCK,STOCK|all]';
const PAPERS = Object.keys(PAPER_SIZES) as PaperName[];
const OPTIONS = ['--out', '--paper', '--date', '--compare'] as const;
type Option = (typeof OPTIONS)[number];

const refused = (says: string): Asked => ({ ok: false, says: `${says} ${USAGE}` });

/**
 * Job files, the folder to write to, the paper and the day that is printed; anything else is refused with the way to use the command.
 * @param today the day that is printed where none is named
 */
export function readArguments(args: readonly string[], today: string): Asked {
  const files: string[] = [];
  const given = new Map<Option, string | undefined>();
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] ?? '';
    const option = OPTIONS.find((name) => arg === name || arg.startsWith(`${name}=`));
    if (option) given.set(option, arg === option ? args[++i] : arg.slice(option.length + 1));
    else if (arg.startsWith('-')) return refused(`"${arg}" is not known here.`);
    else files.push(arg);
  }
  const out = given.get('--out');
  if (files.length === 0) return refused('No job file was named.');
  if (!out) return refused('No folder to write to was named.');
  const named = given.has('--paper') ? (given.get('--paper') ?? '') : 'A4';
  const paper = PAPERS.find((name) => name.toLowerCase() === named.toLowerCase());
  if (!paper) return refused(`"${named}" is no paper known here. Take ${PAPERS.slice(0, -1).join(', ')} or ${PAPERS.at(-1)}.`);
  const date = given.has('--date') ? (given.get('--date') ?? '') : today;
  const compare = given.get('--compare');
  if (given.has('--compare') && !compare) return refused('No stock to compare with was named.');
  const day = printedDay(date);
  return day.ok ? { ok: true, files, out, paper, date, compare } : refused(day.problem.says);
}
