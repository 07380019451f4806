import { forecastPassages } from '../../analysis/life/index.ts';
import type { SimulatedRope } from '../support/growing-ropes.ts';
import { KINDS, simulateBrokenWires, simulateRope } from '../support/growing-ropes.ts';

export const INSPECTIONS = [2, 3, 4, 6, 8];
/** Years ahead within which a place is scored; as in the product. */
const HORIZON = 50;

export interface Score {
  places: number;
  dated: number;
  inside: number;
  early: number; // true passage before the low point
  late: number;
  /** Refused places whose true passage comes before the bound given: at most a tenth of them should. */
  undated: number;
  boundBroken: number;
  errors: number[];
  lineErrors: number[];
  widths: number[];
}

export const emptyScore = (): Score => ({ places: 0, dated: 0, inside: 0, early: 0, late: 0, undated: 0, boundBroken: 0, errors: [], lineErrors: [], widths: [] });

/** Scores every place that had not reached the limit and truly does within the horizon. */
export function scoreRope(rope: SimulatedRope, seed: number, scores: readonly Score[]): void {
  const forecasts = forecastPassages(rope.series, rope.limit, { seed, horizon: HORIZON });
  forecasts.forEach((forecast, i) => {
    const truth = rope.truth[i];
    if (forecast.model === 'reached' || truth <= rope.last) return;
    for (const score of scores) {
      if (truth - rope.last > HORIZON) {
        if (forecast.low === null && forecast.notBefore !== null) score.undated += 1;
        continue;
      }
      score.places += 1;
      if (forecast.low === null) {
        score.undated += 1;
        if (forecast.notBefore !== null && truth < forecast.notBefore) score.boundBroken += 1;
        continue;
      }
      score.dated += 1;
      const high = forecast.high ?? Infinity;
      if (truth < forecast.low) score.early += 1;
      else if (truth > high) score.late += 1;
      else score.inside += 1;
      score.widths.push((high - forecast.low) / (truth - rope.last));
      score.errors.push(Math.abs((forecast.median ?? Infinity) - truth));
      score.lineErrors.push(Math.abs(lineCrossing(rope, i) - truth));
    }
  });
}

/** Where an independent straight line through the readings of one place meets the limit. */
function lineCrossing(rope: SimulatedRope, index: number): number {
  const points = rope.series[index].points;
  const n = points.length;
  const t = points.reduce((sum, each) => sum + each.t, 0) / n;
  const y = points.reduce((sum, each) => sum + each.value, 0) / n;
  let sxy = 0;
  let sxx = 0;
  for (const each of points) {
    sxy += (each.t - t) * (each.value - y);
    sxx += (each.t - t) ** 2;
  }
  const slope = sxy / sxx;
  return slope > 0 ? t + (rope.limit - y) / slope : Infinity;
}

const middle = (values: number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;

export function lineOf(name: string, score: Score): string {
  const cover = score.inside / Math.max(1, score.dated);
  return `${name.padEnd(24)} places ${String(score.places).padStart(5)} dated ${(score.dated / Math.max(1, score.places)).toFixed(2)} coverage ${cover.toFixed(3)} early ${(score.early / Math.max(1, score.dated)).toFixed(3)} late ${(score.late / Math.max(1, score.dated)).toFixed(3)} `
    + `median error ${middle(score.errors).toFixed(2)} y, straight line ${middle(score.lineErrors).toFixed(2)} y, width ${middle(score.widths).toFixed(2)}, bound broken ${score.boundBroken}/${score.undated}`;
}

/** `life-coverage [ropes per law and number of inspections] [first seed]`: coverage of the 80 % interval on simulated ropes. */
export async function run(args: string[]): Promise<void> {
  const each = Number(args[0] ?? 10);
  const seed = Number(args[1] ?? 1);
  const overall = emptyScore();
  const byCount = INSPECTIONS.map(() => emptyScore());
  const byKind = KINDS.map(() => emptyScore());
  const wires = INSPECTIONS.map(() => emptyScore());
  let ropes = 0;
  for (let k = 0; k < each; k += 1) {
    INSPECTIONS.forEach((inspections, n) => {
      KINDS.forEach((kind, at) => {
        scoreRope(simulateRope(seed + k, inspections, kind), seed, [overall, byCount[n], byKind[at]]);
        ropes += 1;
      });
      for (const exponential of [false, true]) scoreRope(simulateBrokenWires(seed + k, inspections, exponential), seed, [wires[n]]);
    });
  }
  console.log(`${ropes} ropes`);
  console.log(lineOf('all', overall));
  INSPECTIONS.forEach((inspections, n) => console.log(lineOf(`${inspections} inspections`, byCount[n])));
  KINDS.forEach((kind, at) => console.log(lineOf(kind, byKind[at])));
  INSPECTIONS.forEach((inspections, n) => console.log(lineOf(`broken wires, ${inspections}`, wires[n])));
}
