/** Scores of found changes against several readers' marks (van den Burg and Williams 2020): index of the first value of each new segment. */
export type Readers = Readonly<Record<string, readonly number[]>>;

/** Harmonic mean of precision (against any reader) and recall (mean over readers), a change counted within `margin`; the start counts as found. */
export function f1Score(readers: Readers, found: readonly number[], margin = 5): number {
  const starts = [...new Set([0, ...found])];
  const marks = Object.values(readers).map((each) => [...new Set([0, ...each])]);
  const all = [...new Set(marks.flat())];
  const precision = hits(all, starts, margin) / starts.length;
  const recall = marks.reduce((sum, each) => sum + hits(each, starts, margin) / each.length, 0) / marks.length;
  return (2 * precision * recall) / (precision + recall);
}

function hits(marks: readonly number[], starts: readonly number[], margin: number): number {
  const left = new Set(starts);
  let count = 0;
  for (const mark of [...marks].sort((a, b) => a - b)) {
    const nearest = [...left].filter((each) => Math.abs(each - mark) <= margin).sort((a, b) => Math.abs(a - mark) - Math.abs(b - mark) || a - b)[0];
    if (nearest === undefined) continue;
    left.delete(nearest);
    count += 1;
  }
  return count;
}

/** Mean over readers of how well the best found segment covers each of theirs (intersection over union, weighted by length). */
export function covering(readers: Readers, found: readonly number[], count: number): number {
  const segments = segmentsOf(found, count);
  const of = (marks: readonly number[]) => segmentsOf(marks, count).reduce((sum, mine) => sum + (mine.end - mine.from) * Math.max(...segments.map((each) => overlap(mine, each))), 0) / count;
  const shares = Object.values(readers).map(of);
  return shares.reduce((sum, each) => sum + each, 0) / shares.length;
}

interface Segment { readonly from: number; readonly end: number }

function segmentsOf(starts: readonly number[], count: number): Segment[] {
  const bounds = [0, ...starts.filter((each) => each > 0).sort((a, b) => a - b), count];
  return bounds.slice(1).map((end, i) => ({ from: bounds[i], end }));
}

function overlap(a: Segment, b: Segment): number {
  const shared = Math.max(0, Math.min(a.end, b.end) - Math.max(a.from, b.from));
  return shared / (a.end - a.from + b.end - b.from - shared);
}
