import type { Channel } from '../rope/trace.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Samples in order of position with a mask for each column. */
export interface MaskedSamples {
  readonly count: number;
  readonly positions: Float64Array;
  readonly channels: readonly Channel[];
  readonly typicalStep: number;
  /** Smallest difference that the written positions can show, in metres; 0 where unknown. */
  readonly resolution: number;
}

export interface Gap {
  readonly from: number;
  readonly to: number;
}

export interface EvenGrid {
  readonly start: number;
  readonly step: number;
  readonly length: number;
  readonly channels: readonly Channel[];
  /** Lengths without samples. */
  readonly gaps: readonly Gap[];
  /** False where the samples already stood on an even grid and were taken over as they are. */
  readonly interpolated: boolean;
  /** Samples beside an otherwise even grid, left out: damaged positions. */
  readonly offGrid: number;
}

/**
 * Puts samples on an even grid. Where they already lie on one, to the resolution of the written positions, each value is
 * taken over untouched and absent samples are masked. Otherwise values are interpolated linearly between neighbours that
 * are both valid and near each other; longer gaps stay masked. Null where the span is absurd for the count of samples.
 */
export function evenGrid(samples: MaskedSamples): EvenGrid | null {
  const { count, positions, typicalStep } = samples;
  const span = positions[count - 1] - positions[0];
  if (!(span > 0) || !(typicalStep > 0) || span / typicalStep > THRESHOLDS.emptySpan.value * count + 10_000) return null;
  const gaps = gapsOf(samples);
  const lattice = latticeOf(samples);
  return lattice === null ? interpolateOnGrid(samples, gaps) : takeLattice(samples, gaps, lattice);
}

/** Lengths between neighbours that are more than a few local steps, and more than some millimetres, apart. */
function gapsOf({ count, positions, typicalStep }: MaskedSamples): Gap[] {
  const gaps: Gap[] = [];
  let local = typicalStep;
  for (let i = 1; i < count; i += 1) {
    const step = positions[i] - positions[i - 1];
    if (step > gapLimit(local)) gaps.push({ from: positions[i - 1] + local / 2, to: positions[i] - local / 2 });
    else local += 0.1 * (step - local);
  }
  return gaps;
}

function gapLimit(localStep: number): number {
  return Math.max(THRESHOLDS.gapLength.value, THRESHOLDS.gapSteps.value * localStep);
}

interface Lattice {
  readonly step: number;
  readonly first: number;
  readonly tolerance: number;
  readonly offGrid: number;
}

/** Share of samples that may stand beside an even grid before it counts as none. */
const OFF_GRID_SHARE = 0.005;

/**
 * The even grid on which the positions already lie, but for a few damaged ones, or null. Tried with the median step and with
 * the mean of the plain steps: rounded positions of a step of 1.5 mm go 2, 1, 2, 1 mm, and only their mean is the step.
 */
function latticeOf(samples: MaskedSamples): Lattice | null {
  const { count, positions, typicalStep, resolution } = samples;
  if (count < 3) return null;
  let sum = 0;
  let plain = 0;
  for (let i = 1; i < count; i += 1) {
    const step = positions[i] - positions[i - 1];
    if (step > 2.5 * typicalStep) continue;
    sum += step;
    plain += 1;
  }
  for (const base of [typicalStep, plain === 0 ? typicalStep : sum / plain]) {
    // Rounding moves a position, and the first one that all are counted from, by half the resolution each.
    const tolerance = Math.min(0.4 * base, Math.max(1.05 * resolution, 0.02 * base));
    const step = refinedStep(positions, count, base);
    for (let first = 0; step > 0 && first < Math.min(3, count); first += 1) {
      const offGrid = countOffGrid(positions, count, first, step, tolerance);
      if (offGrid <= OFF_GRID_SHARE * count) return { step, first, tolerance, offGrid };
    }
  }
  return null;
}

/** The step that puts the last position on the grid, counted in steps near `base`. */
function refinedStep(positions: Float64Array, count: number, base: number): number {
  let steps = 0;
  let residue = 0;
  for (let i = 1; i < count; i += 1) {
    // What rounding leaves over is carried on, so that a step that is no whole number of digits does not lose count.
    const exact = (positions[i] - positions[i - 1]) / base + residue;
    const whole = Math.round(exact);
    residue = Math.max(-0.4, Math.min(0.4, exact - whole)) * 0.5;
    steps += whole;
  }
  const step = (positions[count - 1] - positions[0]) / steps;
  for (const digits of [4, 5, 6, 7, 8]) {
    const rounded = Number(step.toPrecision(digits));
    // Only the noise of floating point is rounded away; anything more would shift the far end.
    if (Math.abs(rounded - step) * steps <= 1e-7) return rounded;
  }
  return step;
}

function countOffGrid(positions: Float64Array, count: number, first: number, step: number, tolerance: number): number {
  let offGrid = first;
  let last = -1;
  for (let i = first; i < count; i += 1) {
    const offset = positions[i] - positions[first];
    const k = Math.round(offset / step);
    if (k <= last || Math.abs(offset - k * step) > tolerance) offGrid += 1;
    else last = k;
  }
  return offGrid;
}

function takeLattice(samples: MaskedSamples, gaps: readonly Gap[], { step, first, tolerance, offGrid }: Lattice): EvenGrid {
  const { count, positions, channels } = samples;
  const start = positions[first];
  const shared = { start, step, gaps, interpolated: false, offGrid };
  const length = Math.round((positions[count - 1] - start) / step) + 1;
  if (length === count && offGrid === 0) {
    return { ...shared, length, channels: channels.map((each) => ({ values: each.values.subarray(0, count), valid: each.valid.subarray(0, count) })) };
  }
  return {
    ...shared, length,
    channels: channels.map((each) => {
      const values = new Float64Array(length);
      const valid = new Uint8Array(length);
      let last = -1;
      for (let i = first; i < count; i += 1) {
        const k = Math.round((positions[i] - start) / step);
        if (k <= last || k >= length || Math.abs(positions[i] - start - k * step) > tolerance) continue;
        last = k;
        values[k] = each.values[i];
        valid[k] = each.valid[i];
      }
      return { values, valid };
    }),
  };
}

function interpolateOnGrid(samples: MaskedSamples, gaps: readonly Gap[]): EvenGrid {
  const { count, positions, channels, typicalStep } = samples;
  const step = Number(typicalStep.toPrecision(4));
  const start = positions[0];
  const length = Math.floor((positions[count - 1] - start) / step + 1e-9) + 1;
  const out = channels.map(() => ({ values: new Float64Array(length), valid: new Uint8Array(length) }));
  let right = 1;
  let local = typicalStep;
  for (let k = 0; k < length; k += 1) {
    const x = start + k * step;
    while (right < count - 1 && positions[right] < x) {
      const passed = positions[right] - positions[right - 1];
      if (passed <= gapLimit(local)) local += 0.1 * (passed - local);
      right += 1;
    }
    const left = right - 1;
    const wide = positions[right] - positions[left];
    const share = Math.min(1, Math.max(0, (x - positions[left]) / wide));
    const apart = wide > gapLimit(local);
    // At the rim of a gap a sample still stands for half a step to its own side.
    const near = apart ? (x - positions[left] <= step / 2 ? left : positions[right] - x <= step / 2 ? right : -1) : -1;
    for (let c = 0; c < channels.length; c += 1) {
      const { values, valid } = channels[c];
      if (apart) {
        if (near >= 0 && valid[near] === 1) { out[c].values[k] = values[near]; out[c].valid[k] = 1; }
      } else if (valid[left] === 1 && valid[right] === 1) {
        out[c].values[k] = values[left] + share * (values[right] - values[left]);
        out[c].valid[k] = 1;
      }
    }
  }
  return { start, step, length, channels: out, gaps, interpolated: true, offGrid: 0 };
}
