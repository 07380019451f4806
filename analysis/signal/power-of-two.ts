/** The smallest power of two that is at least n, and at least 2. */
export function powerOfTwoFrom(n: number): number {
  let size = 2;
  while (size < n) size *= 2;
  return size;
}
