/**
 * Reads the text of a job file. The places where a text stops being JSON are found by a walk of our own, because each
 * browser words them differently and some do not name the place. Grammar: RFC 8259.
 */
import { bad, good, type Result } from '../core/result';
import { LONGEST_FILE } from './limits';

/** A job is 9 levels deep. Beyond this the file is something else, and a reader that calls itself would run out of stack. */
const DEEPEST_FILE = 64;

type Fault = ReturnType<typeof bad>;

const refuse = (says: string): Fault => bad('', says);

function placed(text: string, at: number, says: string): Fault {
  const before = text.slice(0, at).split('\n');
  return refuse(`Line ${before.length}, place ${(before.at(-1)?.length ?? 0) + 1}: ${says}`);
}

/** At the end the file is cut short, elsewhere something else stands where `wanted` belongs. */
function stopped(text: string, at: number, wanted: string): Fault {
  if (at < text.length) return placed(text, at, `${wanted} belongs here.`);
  return refuse(
    `The file stops in the middle, on line ${text.split('\n').length}. It was cut short when it was saved or sent; take another copy.`,
  );
}

const SPACE = /[ \t\n\r]*/y;
const SCALAR = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const PART_OF_SCALAR = /[-+.\w]*/y;
/** A string without its opening mark. A short run at a time, so that no pattern works through millions of characters. */
const STRING_RUN = /(?:[ !#-[\]-\uffff]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})){1,1000}/y;

/** `nul` or `1.` at the very end of a file is a value cut short, not a wrong one. */
const isBeginning = (word: string): boolean => /^-?[\d.eE+-]*$/.test(word) || ['true', 'false', 'null'].some((whole) => whole.startsWith(word));

/** Where `pattern` (sticky) ends when it is tried at `at`; `at` itself where it does not match. */
function after(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

/** Just past the closing mark of the string that opens at `at`, or the fault in it. */
function stringEnd(text: string, at: number): number | Fault {
  let place = at + 1;
  for (;;) {
    const next = after(STRING_RUN, text, place);
    if (next === place) break;
    place = next;
  }
  if (text[place] === '"') return place + 1;
  // A backslash with its letter missing is the cut end of a file, not a fault in it.
  if (text[place] === '\\' && !/^\\(?:[^u]|u.{0,3}[^0-9a-fA-F])/s.test(text.slice(place, place + 6))) return stopped(text, text.length, '"');
  return stopped(text, place, 'A closing " or another character');
}

/** The first place where the text is no longer JSON, or undefined where all of it is. Works without calling itself. */
function findFault(text: string): Fault | undefined {
  const open: ('{' | '[')[] = [];
  let at = after(SPACE, text, 0);
  let wants: 'value' | 'value or ]' | 'key' | 'key or }' | 'rest' = 'value';
  for (;;) {
    const here = text[at];
    if (wants === 'rest') {
      const inside = open.at(-1);
      if (inside === undefined) return at < text.length ? placed(text, at, 'the job ended before this. Nothing belongs after it.') : undefined;
      if (here === ',') {
        wants = inside === '{' ? 'key' : 'value';
        at += 1;
      } else if (here === (inside === '{' ? '}' : ']')) {
        open.pop();
        at += 1;
      } else return stopped(text, at, inside === '{' ? 'A comma or a }' : 'A comma or a ]');
    } else if (wants === 'key' || wants === 'key or }') {
      if (here === '}' && wants === 'key or }') {
        open.pop();
        at += 1;
        wants = 'rest';
      } else if (here === '"') {
        const end = stringEnd(text, at);
        if (typeof end !== 'number') return end;
        at = after(SPACE, text, end);
        if (text[at] !== ':') return stopped(text, at, 'A colon');
        at += 1;
        wants = 'value';
      } else return stopped(text, at, 'The name of a field, in " marks,');
    } else if (here === '{' || here === '[') {
      open.push(here);
      if (open.length > DEEPEST_FILE) {
        return placed(text, at, `the brackets are nested more than ${DEEPEST_FILE} deep. A Bendwright job is never so deep.`);
      }
      wants = here === '{' ? 'key or }' : 'value or ]';
      at += 1;
    } else if (here === ']' && wants === 'value or ]') {
      open.pop();
      at += 1;
      wants = 'rest';
    } else if (here === '"') {
      const end = stringEnd(text, at);
      if (typeof end !== 'number') return end;
      at = end;
      wants = 'rest';
    } else {
      const end = after(SCALAR, text, at);
      const word = after(PART_OF_SCALAR, text, at);
      if (end === at || end !== word) return stopped(text, word === text.length && isBeginning(text.slice(at)) ? word : at, 'A value');
      at = end;
      wants = 'rest';
    }
    at = after(SPACE, text, at);
  }
}

/**
 * The document in a text, or one sentence saying where and why it cannot be read. Never throws and never takes long:
 * length is looked at first, depth before anything that calls itself.
 */
export function readJson(text: string): Result<unknown> {
  if (text.length > LONGEST_FILE) {
    return refuse(
      `The file is ${Math.ceil(text.length / 1e6)} MB; a job file is at most ${LONGEST_FILE / 1e6} MB. This is something other than a Bendwright job.`,
    );
  }
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (body.trim() === '') return refuse('The file is empty. Choose a job saved by Bendwright.');
  const fault = findFault(body);
  if (fault) return fault;
  try {
    return good(JSON.parse(body));
  } catch {
    return refuse('The file cannot be read as a job. Take another copy.');
  }
}
