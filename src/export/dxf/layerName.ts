import { bad, good } from '../../core/result';
import type { Result } from '../../core/result';

/** Source: the published DXF reference, symbol table names. The caret opens a code for a control character in any DXF string. */
const FORBIDDEN = '<>/\\":;?*|=,`^';
const LONGEST = 255;

/** C0, DEL and C1 control characters, line and paragraph separators: each could end the line that the name stands on. */
// oxlint-disable-next-line no-control-regex
const UNSEEN = /[\u0000-\u001F\u007F-\u009F\u2028\u2029]/;

/** Half of a character made of two: cannot be written as UTF-8. */
const HALF = /\p{Cs}/u;

/**
 * A layer name that every reader of DXF takes, or the problem with it.
 * @param field path of the job's field, such as `dxf.layers.outline`
 * @param what what the layer is for, as it stands in the sentence: `outline`
 * Refuses an empty name, one over 255 characters, the characters that DXF keeps for itself, characters that cannot be seen,
 * spaces at the ends (some readers drop them), and Defpoints, which is never plotted (from memory).
 */
export function layerName(field: string, what: string, name: string): Result<string> {
  const the = `The layer name for the ${what}`;
  if (name.trim() === '') return bad(field, `${the} is empty. Give it a name such as ${what.toUpperCase()}.`);
  if (UNSEEN.test(name)) return bad(field, `${the} has a line break or another character that cannot be seen. Type it again on one line.`);
  if (HALF.test(name)) return bad(field, `${the} has half of a character in it. Type it again.`);
  const wrong = [...new Set(name)].filter((c) => FORBIDDEN.includes(c));
  if (wrong.length > 0) {
    return bad(field, `${the} has ${wrong.join(' ')} in it, which DXF does not allow in a name. Use letters, figures, spaces, - and _.`);
  }
  if (name !== name.trim()) return bad(field, `${the} begins or ends with a space, which some readers drop. Take the space away.`);
  if (name.length > LONGEST) {
    return bad(field, `${the} is ${name.length} characters long. DXF takes ${LONGEST} at most.`, name.length - LONGEST);
  }
  if (name.toLowerCase() === 'defpoints') {
    return bad(field, `${the} is Defpoints, a layer that is never plotted or cut. Choose another name.`);
  }
  return good(name);
}
