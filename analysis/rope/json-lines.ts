/** Where things stand in a JSON text: line (from 1) of each value by path such as `rope.diameter_mm` or `inspections[2].date`. */
export interface JsonLines {
  readonly lineOf: ReadonlyMap<string, number>;
  /** Keys that one object holds twice: a reader would silently drop the first. */
  readonly repeatedKeys: readonly { readonly path: string; readonly line: number }[];
  /** Line at which the text stops being JSON, or null. */
  readonly brokenAt: number | null;
}

const MAX_DEPTH = 200;
class Broken extends Error {}

/**
 * Walks a JSON text once and notes the line of every value. It judges only as far as finding its way needs;
 * JSON.parse stays the judge of validity. Linear time.
 */
export function jsonLines(text: string): JsonLines {
  const lineOf = new Map<string, number>();
  const repeatedKeys: { path: string; line: number }[] = [];
  let at = 0;
  let line = 1;

  const skipBlanks = () => {
    for (; at < text.length; at += 1) {
      const char = text[at];
      if (char === '\n') line += 1;
      else if (char !== ' ' && char !== '\t' && char !== '\r') return;
    }
  };
  const expect = (char: string) => {
    if (text[at] !== char) throw new Broken();
    at += 1;
  };
  const readString = (): string => {
    const from = at;
    expect('"');
    while (at < text.length && text[at] !== '"') {
      if (text[at] === '\n') throw new Broken();
      at += text[at] === '\\' ? 2 : 1;
    }
    expect('"');
    return unescaped(text.slice(from, at));
  };
  const readObject = (path: string, depth: number) => {
    const seen = new Set<string>();
    at += 1;
    skipBlanks();
    while (text[at] !== '}') {
      if (seen.size > 0) { expect(','); skipBlanks(); }
      const keyLine = line;
      const key = readString();
      const child = path === '' ? key : `${path}.${key}`;
      if (seen.has(key)) repeatedKeys.push({ path: child, line: keyLine });
      seen.add(key);
      skipBlanks();
      expect(':');
      readValue(child, depth + 1);
      skipBlanks();
    }
    at += 1;
  };
  const readArray = (path: string, depth: number) => {
    at += 1;
    skipBlanks();
    for (let index = 0; text[at] !== ']'; index += 1) {
      if (index > 0) expect(',');
      readValue(`${path}[${index}]`, depth + 1);
      skipBlanks();
    }
    at += 1;
  };
  const readValue = (path: string, depth: number) => {
    if (depth > MAX_DEPTH) throw new Broken();
    skipBlanks();
    lineOf.set(path, line);
    if (text[at] === '{') readObject(path, depth);
    else if (text[at] === '[') readArray(path, depth);
    else if (text[at] === '"') readString();
    else {
      at += scalarLength(text, at);
    }
  };

  try {
    readValue('', 0);
    skipBlanks();
    if (at < text.length) throw new Broken();
  } catch (error) {
    if (!(error instanceof Broken)) throw error;
    return { lineOf, repeatedKeys, brokenAt: line };
  }
  return { lineOf, repeatedKeys, brokenAt: null };
}

function unescaped(quoted: string): string {
  try {
    return JSON.parse(quoted) as string;
  } catch {
    throw new Broken();
  }
}

/** Length of the number or word at `at`. */
function scalarLength(text: string, at: number): number {
  const scalar = /[-+.\w]+/y;
  scalar.lastIndex = at;
  const found = scalar.exec(text);
  if (!found || !/^(true|false|null|-?(0|[1-9]\d*)(\.\d+)?([eE][-+]?\d+)?)$/.test(found[0])) throw new Broken();
  return found[0].length;
}

/** Line of a path, or of the nearest thing around it that the text does hold. */
export function nearestLine(lines: JsonLines, path: string): number | null {
  for (let rest = path; ; rest = rest.replace(/(\.[^.[\]]*|\[\d+\]|^[^.[\]]+)$/, '')) {
    const line = lines.lineOf.get(rest);
    if (line !== undefined) return line;
    if (rest === '') return null;
  }
}
