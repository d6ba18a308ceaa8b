/** A reader of RFC 4180 of its own, letter by letter: it knows nothing of the writer. Throws on a file that breaks the form. */
export function readCsv(file: string): readonly (readonly string[])[] {
  const text = file.startsWith('\uFEFF') ? file.slice(1) : file;
  const rows: string[][] = [];
  let row: string[] = [];
  let i = 0;
  while (i < text.length) {
    let value = '';
    if (text[i] === '"') {
      i += 1;
      for (;;) {
        if (i >= text.length) throw new Error('a quote is never closed');
        if (text[i] !== '"') value += text[i++];
        else if (text[i + 1] === '"') {
          value += '"';
          i += 2;
        } else break;
      }
      i += 1;
    } else {
      while (i < text.length && text[i] !== ',' && text[i] !== '\r') {
        if (text[i] === '"' || text[i] === '\n') throw new Error(`a bare ${JSON.stringify(text[i])} at ${i}`);
        value += text[i++];
      }
    }
    row.push(value);
    if (text[i] === ',') {
      i += 1;
      if (text[i] === '\r') row.push('');
    }
    if (text[i] === '\r') {
      if (text[i + 1] !== '\n') throw new Error(`a bare return at ${i}`);
      rows.push(row);
      row = [];
      i += 2;
    }
  }
  if (row.length > 0) throw new Error('the last row does not end');
  return rows;
}
