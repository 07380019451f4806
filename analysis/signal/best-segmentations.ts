import type { SegmentCost } from './segment-cost.ts';

/**
 * The cheapest segmentation for each number of changes 0..most (segment neighbourhood search, Auger and Lawrence 1989).
 * Quadratic in `count`: for short series and for comparing numbers of changes.
 */
export function bestSegmentations(count: number, cost: SegmentCost, most: number): { starts: number[]; cost: number }[] {
  const costs: Float64Array[] = [];
  const previous: Int32Array[] = [];
  for (let changes = 0; changes <= most; changes += 1) {
    const row = new Float64Array(count + 1).fill(Infinity);
    const from = new Int32Array(count + 1);
    for (let end = changes + 1; end <= count; end += 1) {
      if (changes === 0) {
        row[end] = cost(0, end);
        continue;
      }
      for (let start = changes; start < end; start += 1) {
        const sum = costs[changes - 1][start] + cost(start, end);
        if (sum < row[end]) {
          row[end] = sum;
          from[end] = start;
        }
      }
    }
    costs.push(row);
    previous.push(from);
  }
  return costs.map((row, changes) => {
    const starts: number[] = [];
    let end = count;
    for (let k = changes; k > 0; k -= 1) {
      end = previous[k][end];
      starts.push(end);
    }
    return { starts: starts.reverse(), cost: row[count] };
  });
}
