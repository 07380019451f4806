/**
 * For a position the index of the stretch that holds it: stretch k ends before `ends[k]`, the last one is without end. Places
 * asked one after the other lie near each other, so the search goes on from the last answer.
 */
export function walkAlong(ends: ArrayLike<number>): (x: number) => number {
  const last = ends.length - 1;
  let k = 0;
  return (x) => {
    while (k < last && x >= ends[k]) k += 1;
    while (k > 0 && x < ends[k - 1]) k -= 1;
    return k;
  };
}
