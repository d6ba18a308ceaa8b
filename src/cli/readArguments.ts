export type Asked = { readonly ok: true; readonly files: readonly string[]; readonly out: string } | { readonly ok: false; readonly says: string };

const USAGE = 'Use it so: npm run --silent make -- JOB.json [MORE.json …] --out DIR';

/** Job files and the folder to write to; anything else is refused with the way to use the command. */
export function readArguments(args: readonly string[]): Asked {
  const files: string[] = [];
  let out: string | undefined;
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] ?? '';
    if (arg === '--out') out = args[++i];
    else if (arg.startsWith('--out=')) out = arg.slice('--out='.length);
    else if (arg.startsWith('-')) return { ok: false, says: `"${arg}" is not known here. ${USAGE}` };
    else files.push(arg);
  }
  if (files.length === 0) return { ok: false, says: `No job file was named. ${USAGE}` };
  if (!out) return { ok: false, says: `No folder to write to was named. ${USAGE}` };
  return { ok: true, files, out };
}
