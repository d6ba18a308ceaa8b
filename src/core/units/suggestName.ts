/**
 * The known name nearest to one that was mistyped, for "Did you mean gap?".
 *
 * Near means: at most one letter in three wrong (left out, put in, changed, or two neighbours swapped), and one is always
 * allowed. Capitals do not count. Of two equally near the one first in the alphabet is chosen, so that the answer does not hang
 * on the order of the list. Null where nothing is near.
 */
export function suggestName(typed: string, known: Iterable<string>): string | null {
  const wanted = [...typed.toLowerCase()];
  const allowed = Math.max(1, Math.floor(wanted.length / 3));
  let best: string | null = null;
  let least = allowed;
  for (const name of known) {
    const letters = [...name.toLowerCase()];
    const longer = Math.max(letters.length, wanted.length);
    if (Math.abs(letters.length - wanted.length) > least) continue;
    const wrong = lettersWrong(wanted, letters);
    if (wrong >= longer || wrong > least) continue;
    if (best === null || wrong < least || name < best) best = name;
    least = wrong;
  }
  return best;
}

/** Edit distance with swaps of neighbours (restricted Damerau-Levenshtein; textbook, from memory). */
function lettersWrong(a: readonly string[], b: readonly string[]): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  a.forEach((letter, i) => {
    const row = [i + 1];
    b.forEach((other, j) => {
      const changed = (last[j] ?? 0) + (letter === other ? 0 : 1);
      let least = Math.min(changed, (last[j + 1] ?? 0) + 1, (row[j] ?? 0) + 1);
      if (i > 0 && j > 0 && letter === b[j - 1] && a[i - 1] === other) least = Math.min(least, (beforeLast[j - 1] ?? 0) + 1);
      row.push(least);
    });
    beforeLast = last;
    last = row;
  });
  return last[b.length] ?? 0;
}
