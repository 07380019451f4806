import { quantile } from '../signal/quantile.ts';
import type { Channel } from '../rope/trace.ts';
import { finding } from './findings.ts';
import { instrumentKey } from './header-fingerprint.ts';
import { noiseOf } from './judge-signal.ts';
import type { Run } from './run.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Sampling steps that differ by more than this share make sample-to-sample noise incomparable. */
const SAME_STEP = 0.2;

/**
 * Adds a finding to each run whose noise stands out against the other runs of the same columns and sampling step: the
 * median of the others is what this head shows on this rope. Runs without such a neighbour are returned as they are.
 */
export function compareNoise(runs: readonly Run[]): Run[] {
  const noises = runs.map((run) => ({ loss: noiseIn(run.trace.loss), fault: noiseIn(run.trace.fault) }));
  return runs.map((run, index) => {
    const others = noises.filter((_, n) => n !== index && comparable(run, runs[n]));
    const found = [
      ...standsOut(run, 'LMA', '%', noises[index].loss, others.map((each) => each.loss)),
      ...standsOut(run, 'LF', run.trace.faultUnit, noises[index].fault, others.map((each) => each.fault)),
    ];
    return found.length === 0 ? run : { ...run, quality: [...run.quality, ...found] };
  });
}

function noiseIn(channel: Channel | null): number | null {
  return channel === null ? null : noiseOf(channel);
}

function comparable(a: Run, b: Run): boolean {
  return !b.rejected && Math.abs(a.trace.step / b.trace.step - 1) <= SAME_STEP && instrumentKey(a.understanding) === instrumentKey(b.understanding);
}

function standsOut(run: Run, name: string, unit: string, noise: number | null, others: readonly (number | null)[]) {
  const known = others.filter((each) => each !== null && each > 0) as number[];
  if (noise === null || known.length === 0) return [];
  const usual = quantile(known, 0.5);
  if (!(noise > THRESHOLDS.noiseAgainstRuns.value * usual)) return [];
  const { start, step, length } = run.trace;
  return [finding('noise-against-runs', 'warning', start, start + (length - 1) * step, `Noise of ${name} is ${noise.toPrecision(2)} ${unit}, ${(noise / usual).toFixed(1)} times the ${usual.toPrecision(2)} ${unit} of the other runs${known.length === 1 ? ' (one only)' : ''}: small damage is harder to see here. Check guidance of the head, cleaning and gain.`.replaceAll('  ', ' '))];
}
