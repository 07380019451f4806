import { quantile } from '../signal/quantile.ts';

/** Share of rows that repeat the position before them from which on the positions count as written too coarsely. */
const REPEATS = 0.3;
/** A run this many times longer than is usual is the rope standing still. */
const STANDING = 4;

/**
 * Where positions are written more coarsely than the signal is sampled (10 mm for a sample every 5 mm), the samples of one
 * written position are spread evenly over its rounding interval, in the order in which they came: an even motion within some
 * millimetres is a far smaller assumption than that the rope jumped. Longer repeats are stops and stay. In place, linear
 * time. Returns how many samples share a position as a rule, or null where nothing was done.
 */
export function spreadCoarsePositions(positions: Float64Array, rows: number, resolution: number): number | null {
  if (rows < 10 || !(resolution > 0)) return null;
  const lengths: number[] = [];
  let repeats = 0;
  forRuns(positions, rows, (first, end) => {
    repeats += end - first - 1;
    if (lengths.length < 100_000) lengths.push(end - first);
  });
  if (repeats < REPEATS * rows || lengths.length < 5) return null;
  const usual = quantile(lengths, 0.5);
  if (usual < 1.5 && quantile(lengths, 0.75) < 1.5) return null;
  if (layEven(positions, rows, resolution)) return Math.max(usual, rows / lengths.length);
  const most = STANDING * Math.max(2, usual);
  let before = NaN;
  forRuns(positions, rows, (first, end) => {
    const at = positions[first];
    const after = end < rows ? positions[end] : NaN;
    const rises = after > at || (Number.isNaN(after) && at > before);
    before = at;
    const count = end - first;
    if (count > most) return;
    // The first and last runs are cut short: theirs is the end of the interval that borders on the neighbour.
    const cut = count < usual && (first === 0 || end === rows);
    const from = cut && first === 0 ? 1 - count / usual : 0;
    const width = cut ? count / usual : 1;
    for (let i = first; i < end; i += 1) positions[i] = at + (rises ? 1 : -1) * resolution * (from + (width * (i - first + 0.5)) / count - 0.5);
  });
  return usual;
}

/** Rows further than this from a straight line, as a share, mean that the samples were not taken at even steps. */
const OFF_LINE = 0.002;

/**
 * Where all rows lie on one straight line within rounding, the samples stand at even steps: the line replaces the rounded
 * positions. Its slope is of least squares, so that rounding averages out.
 */
function layEven(positions: Float64Array, rows: number, resolution: number): boolean {
  const middle = (rows - 1) / 2;
  const origin = positions[0];
  let sum = 0;
  let product = 0;
  let squares = 0;
  for (let i = 0; i < rows; i += 1) {
    sum += positions[i] - origin;
    product += (positions[i] - origin) * (i - middle);
    squares += (i - middle) ** 2;
  }
  const slope = product / squares;
  const start = origin + sum / rows - slope * middle;
  let off = 0;
  for (let i = 0; i < rows; i += 1) if (Math.abs(positions[i] - start - slope * i) > 0.6 * resolution) off += 1;
  if (off > OFF_LINE * rows) return false;
  for (let i = 0; i < rows; i += 1) positions[i] = start + slope * i;
  return true;
}

/** Runs of equal positions as [first, end). The end is found before the run is handed over, so it may be changed. */
function forRuns(positions: Float64Array, rows: number, each: (first: number, end: number) => void): void {
  let first = 0;
  while (first < rows) {
    const at = positions[first];
    let end = first + 1;
    while (end < rows && positions[end] === at) end += 1;
    each(first, end);
    first = end;
  }
}
