/** One line split at a delimiter; ' ' stands for any run of blanks. Quoted cells may hold the delimiter; a doubled quote is one quote. */
export function splitLine(line: string, delimiter: string): string[] {
  if (delimiter === ' ') return splitAtBlanks(line);
  if (!line.includes('"')) return line.split(delimiter);
  const cells: string[] = [];
  let at = 0;
  for (;;) {
    const quote = openingQuote(line, at);
    if (quote < 0) {
      const end = line.indexOf(delimiter, at);
      cells.push(line.slice(at, end < 0 ? line.length : end));
      if (end < 0) return cells;
      at = end + delimiter.length;
      continue;
    }
    const close = closingQuote(line, quote + 1);
    const end = line.indexOf(delimiter, close + 1);
    const rest = line.slice(close + 1, end < 0 ? line.length : end).trim();
    cells.push(line.slice(quote + 1, close).replaceAll('""', '"') + rest);
    if (end < 0) return cells;
    at = end + delimiter.length;
  }
}

function splitAtBlanks(line: string): string[] {
  const trimmed = line.trim();
  if (!trimmed.includes('"')) return trimmed.split(/[ \t]+/);
  return [...trimmed.matchAll(/"((?:[^"]|"")*)"|[^ \t]+/g)].map((found) => (found[1] === undefined ? found[0] : found[1].replaceAll('""', '"')));
}

/** Index of a quote that opens the cell at `at` (blanks may stand before it), or -1. */
function openingQuote(line: string, at: number): number {
  let i = at;
  while (line[i] === ' ') i += 1;
  return line[i] === '"' ? i : -1;
}

/** Index of the quote that closes a cell; the end of the line where none does. */
function closingQuote(line: string, from: number): number {
  for (let i = from; i < line.length; i += 1) {
    if (line[i] !== '"') continue;
    if (line[i + 1] === '"') i += 1;
    else return i;
  }
  return line.length;
}
