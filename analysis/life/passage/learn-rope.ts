import { noiseCells } from './noise-cells.ts';
import type { NoiseCell } from './noise-cells.ts';
import { populationCells } from './population.ts';
import type { PlaceEvidence, PopulationCell } from './population.ts';
import { paceLevel, peakLikelihood, rateTable, shapeFits } from './rate-table.ts';
import type { ScaledPlace, ScaledRope } from './series.ts';
import { LOG_PACE, NO_GROWTH_PRIOR, SHAPES } from './settings.ts';

/** Everything that the readings of one rope say together; made once, asked for each place. */
export interface LearnedRope {
  readonly rope: ScaledRope;
  readonly cells: readonly NoiseCell[];
  readonly evidence: readonly PlaceEvidence[];
  readonly hypotheses: readonly PopulationCell[];
}

export function learnRope(rope: ScaledRope): LearnedRope {
  const unit = 1 / rope.reference;
  const cells = likelyCells(rope, noiseCells(rope), unit);
  const evidence = rope.places.map((place) => evidenceOf(place, cells, unit));
  const hypotheses = populationCells(evidence, { cells, noGrowthPrior: NO_GROWTH_PRIOR, centre: (exponent) => roughCentre(rope, exponent), shapePrior: SHAPES.map((each) => each.prior) });
  return { rope, cells, evidence, hypotheses };
}

/** Shapes that stand for all others while noise cells are weighed. */
const SCOUTS = [1, 0, -1.1, 2];
/** Noise cells this far (natural log) below the best are not looked at further. */
const UNLIKELY = 6;

/** The noise cells that the readings leave standing, by the best that each could do. */
function likelyCells(rope: ScaledRope, cells: readonly NoiseCell[], unit: number): NoiseCell[] {
  const scores = Float64Array.from(cells, (cell) => Math.log(cell.prior));
  const fits = rope.places.map((place) => SCOUTS.map((shape) => shapeFits(place, shape, cells, unit)));
  const byScout = SCOUTS.map((_, s) => Float64Array.from(cells, (_cell, c) => fits.reduce((sum, place) => sum + peakLikelihood(place[s], c), 0)));
  cells.forEach((_, c) => {
    scores[c] += Math.max(...byScout.map((each) => each[c]));
  });
  const best = Math.max(...scores);
  // The likeliest first: it tells the others apart from the start.
  return cells.map((cell, c) => ({ cell, score: scores[c] })).filter(({ score }) => score > best - UNLIKELY).sort((a, b) => b.score - a.score).map(({ cell }) => cell);
}

function evidenceOf(place: ScaledPlace, cells: readonly NoiseCell[], unit: number): PlaceEvidence {
  return {
    noGrowth: Float64Array.from(cells, (cell) => noGrowthLikelihood(place, cell, unit)),
    tables: SHAPES.map(({ shape }) => {
      const fits = shapeFits(place, shape, cells, unit);
      return cells.map((_, c) => rateTable(fits, c));
    }),
    logLevel: Float64Array.from(cells, (cell) => Math.log(paceLevel(place, cell, unit))),
  };
}

/** Readings about a level that stays. For counts: what was there at first, and nothing new. */
function noGrowthLikelihood(place: ScaledPlace, cell: NoiseCell, unit: number): number {
  const n = place.y.length;
  if (place.counts) return place.y.some((y) => Math.abs(y - place.y[0]) > 0.5 * unit) ? -1e3 : Math.log(unit);
  let weight = 0;
  let sum = 0;
  let logs = 0;
  for (let i = 0; i < n; i += 1) {
    const w = 1 / (cell.scale * place.noise[i]) ** 2;
    weight += w;
    sum += w * place.y[i];
    logs += 0.5 * Math.log(w);
  }
  const mean = sum / weight;
  let square = 0;
  for (let i = 0; i < n; i += 1) square += ((place.y[i] - mean) / (cell.scale * place.noise[i])) ** 2;
  return logs - 0.5 * square - 0.5 * n * Math.log(2 * Math.PI) + 0.5 * Math.log((2 * Math.PI) / weight);
}

/** Middle of the places' mean rates between first and last reading, held above what noise alone would show, level taken out. */
function roughCentre(rope: ScaledRope, exponent: number | null): number {
  const rates = rope.places.map((place) => {
    const n = place.y.length;
    const elapsed = -place.u[0];
    const noise = Math.hypot(place.noise[0], place.noise[n - 1]);
    return (Math.max(place.y[n - 1] - place.y[0], 0.5 * noise, 0.02) / Math.max(elapsed, 1e-6)) * Math.max(place.y[n - 1], 0.05) ** -(exponent ?? 0);
  }).sort((a, b) => a - b);
  return Math.max(LOG_PACE.from + 2, Math.min(LOG_PACE.to - 1, Math.log(rates[rates.length >> 1])));
}
