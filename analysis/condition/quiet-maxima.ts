import type { Candidates } from './bank-response.ts';

/** A maximum above this is a pulse, and this near to one, m, stand its own shoulders: they are no noise. */
const STRONG = 6;
const BESIDE = 0.3;

/** Whether an index stands away from the strong ones among the maxima `kept`. To be asked in rising order of index. */
export function awayFromStrong(candidates: Candidates, kept: readonly number[], step: number): (index: number) => boolean {
  const strong = kept.filter((k) => Math.abs(candidates.score[k]) > STRONG).map((k) => candidates.index[k]);
  let nearest = 0;
  return (index) => {
    if (nearest > 0 && index < strong[nearest - 1]) nearest = 0;
    while (nearest + 1 < strong.length && Math.abs(strong[nearest + 1] - index) <= Math.abs(strong[nearest] - index)) nearest += 1;
    return strong.length === 0 || Math.abs(strong[nearest] - index) * step >= BESIDE;
  };
}
