import type { Assessment } from '../../../analysis/assessment/schema.ts';
import type { Tally } from './figures.ts';
import { quantileOf } from './figures.ts';
import type { Trial } from './run-world.ts';

type Alignment = NonNullable<Assessment['inspections'][number]['alignment']>;

/** Straight between points, straight on beyond them: what a reader of the file makes of knots. */
export function alongKnots(xs: readonly number[], ys: readonly number[], x: number, beyond: 'straight' | 'held'): number {
  if (xs.length === 1 || (beyond === 'held' && x <= xs[0])) return ys[0];
  if (beyond === 'held' && x >= xs[xs.length - 1]) return ys[ys.length - 1];
  let i = xs.findIndex((each) => each > x) - 1;
  if (i === -2) i = xs.length - 2;
  i = Math.min(Math.max(i, 0), xs.length - 2);
  return ys[i] + ((x - xs[i]) / (xs[i + 1] - xs[i])) * (ys[i + 1] - ys[i]);
}

export const mapped = (alignment: Alignment, reading: number): number => alongKnots(alignment.knots.map((k) => k.measured_m), alignment.knots.map((k) => k.rope_m), reading, 'straight');

export function apart(a: number, b: number, loop: number | null): number {
  const distance = Math.abs(a - b);
  return loop === null ? distance : Math.min(distance % loop, loop - (distance % loop));
}

/** Errors of every later inspection's map where the first inspection saw the rope, every quarter metre. */
export function scoreAlignment({ world, assessment }: Trial, tally: Tally, name: string): void {
  const first = world.visits[0].travel;
  world.visits.forEach((visit, index) => {
    if (index === 0) return;
    const alignment = assessment.inspections.find((each) => each.id === visit.id)?.alignment;
    if (!alignment) return tally.blame(`${name} no map`, world.seed, visit.id);
    const errors: number[] = [];
    const bounds: number[] = [];
    for (let reading = visit.travel.firstReading + 0.1; reading < visit.travel.lastReading - 0.1; reading += 0.25) {
      const truth = visit.travel.ropeAt(reading);
      if (!world.loop && (truth < first.ropeAt(first.firstReading) || truth > first.ropeAt(first.lastReading))) continue;
      const error = apart(mapped(alignment, reading), truth, world.loop ? world.length : null);
      const bound = alongKnots(alignment.uncertainty_m.map((p) => p.measured_m), alignment.uncertainty_m.map((p) => p.value_m), reading, 'held');
      const inSlip = visit.travel.slips.some((slip) => reading >= slip.at - 1e-9 && reading <= slip.at + slip.over + 1e-9);
      const beside = visit.travel.slips.some((slip) => reading > slip.at - 5 && reading < slip.at + slip.over + 5);
      tally.hit(`${name} covered`, error <= bound + 1e-9);
      if (beside) tally.add(`${name} beside slip`, error);
      else tally.add(`${name} error`, error);
      if (inSlip) tally.add(`${name} in slip`, error);
      errors.push(error);
      bounds.push(bound);
      tally.add(`${name} all`, error);
    }
    const covered = errors.filter((error, i) => error <= bounds[i] + 1e-9).length / Math.max(1, errors.length);
    tally.hit(`${name} scan covered`, covered >= 0.95);
    const high = quantileOf(errors, 0.95);
    tally.add(`${name} bound ratio`, quantileOf(bounds, 0.5) / Math.max(1e-4, high));
    const wrongWay = alignment.reversed !== visit.travel.reversed;
    if (wrongWay || quantileOf(errors, 0.5) > 0.5) tally.blame(`${name} lost`, world.seed, `${visit.id} median ${quantileOf(errors, 0.5).toFixed(2)} m${wrongWay ? ', wrong way' : ''}, confidence ${alignment.confidence.toFixed(2)}, bound ${quantileOf(bounds, 0.5).toFixed(2)}`);
    else if (high > 0.05) tally.blame(`${name} 95 % above 0.05 m`, world.seed, `${visit.id} median ${quantileOf(errors, 0.5).toFixed(3)} 95 % ${high.toFixed(3)} bound ${quantileOf(bounds, 0.5).toFixed(3)} step ${visit.step}`);
    if (covered < 0.95) tally.blame(`${name} bound broken`, world.seed, `${visit.id} covered ${(100 * covered).toFixed(1)} %, median bound ${quantileOf(bounds, 0.5).toFixed(3)} against 95 % error ${high.toFixed(3)}`);
  });
}
