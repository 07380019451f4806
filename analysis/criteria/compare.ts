import type { Clause } from './rule-set.ts';

type Comparator = Clause['comparator'];

/**
 * Relative slack for quantities that were computed in floating point: 100 (28 - 26.32) / 28 is 6 and not 6.000000000000005.
 * It is far below what any gauge resolves. Whole counts are compared exactly: a count is an integer and its limit, where it
 * is a share such as 5 % of 120 wires, is formed as percent * wires / 100, which is exact where the result is whole.
 */
export const RELATIVE_SLACK = 1e-9;

/** Whether `value` is at or past `limit` in the sense of the rule's own word. */
export function isReached(value: number, comparator: Comparator, limit: number, exact = false): boolean {
  const slack = exact ? 0 : RELATIVE_SLACK * Math.max(1, Math.abs(limit));
  if (comparator === '>=') return value >= limit - slack;
  if (comparator === '>') return value > limit + slack;
  if (comparator === '<=') return value <= limit + slack;
  return value < limit - slack;
}

/** Value as a share of the limit, 1 at the limit; for a lower limit the share is limit / value. Against a limit of nothing every value is past it: 1 + value. */
export function shareOfLimit(value: number, comparator: Comparator, limit: number): number {
  if (comparator === '>' || comparator === '>=') {
    if (limit === 0) return 1 + value;
    return value / limit;
  }
  return value === 0 ? 1 + limit : limit / value;
}

/** Larger values are worse unless the rule sets a lower limit. */
export const worseIsMore = (comparator: Comparator): boolean => comparator === '>' || comparator === '>=';
