import type { Candidates, PlacedScores } from './bank-response.ts';
import { falseCallThreshold } from './false-call-threshold.ts';
import { awayFromStrong } from './quiet-maxima.ts';
import { strongestNearby } from './strongest-nearby.ts';

/**
 * Scores of one meaning over all widths. Noise that is not normal has heavy tails where a filter spans a sample or two, and
 * is all but normal where it spans many: each width is held against its own noise, so that a score is as rare in one as in
 * another. `separate` is in samples, `length` in metres.
 */
export function evenTails(candidates: Candidates, separate: number, step: number, length: number, rate: number): Candidates {
  const widths = [...new Set(candidates.noise.map((each) => each.width))];
  const widthOf = candidates.noise.map((each) => widths.indexOf(each.width));
  const isQuiet = awayFromStrong(candidates, strongestNearby(candidates, separate), step);
  const thresholds = byWidth(candidates, widthOf, widths.length).map((own) => {
    const maxima = strongestNearby(own, separate).filter((k) => isQuiet(own.index[k])).map((k) => Math.abs(own.score[k]));
    return falseCallThreshold(maxima, length, rate / widths.length).score;
  });
  const least = Math.min(...thresholds);
  const factorOf = candidates.noise.map((_, filter) => thresholds[widthOf[filter]] / least);
  return {
    ...candidates,
    score: candidates.score.map((score, k) => score / factorOf[candidates.filter[k]]),
    noise: candidates.noise.map((each, filter) => ({ ...each, sigma: each.sigma.map((sigma) => sigma * factorOf[filter]) })),
  };
}

function byWidth({ count, index, score, filter }: Candidates, widthOf: readonly number[], widths: number): PlacedScores[] {
  const counts = new Array<number>(widths).fill(0);
  for (let k = 0; k < count; k += 1) counts[widthOf[filter[k]]] += 1;
  const parts = counts.map((members) => ({ count: 0, index: new Float64Array(members), score: new Float64Array(members) }));
  for (let k = 0; k < count; k += 1) {
    const part = parts[widthOf[filter[k]]];
    part.index[part.count] = index[k];
    part.score[part.count] = score[k];
    part.count += 1;
  }
  return parts;
}
