/** Lengths tried for following the line, in its periods: from a phase that wanders fast to a steady one. */
const SPANS = [3, 5, 8, 13, 21, 34, 55] as const;
/** Periods after which the phase is set afresh: a recurrence over the whole trace would drift. */
const AFRESH = 64;

/**
 * Takes a line of `frequency` (cycles a sample) whose amplitude and phase wander off `values`, in place. The line is
 * measured in `reference` (the same signal with its pulses bounded). It is brought to zero frequency, averaged over single
 * periods and smoothed over the span that predicts each period best from its neighbours without itself, so that noise
 * is not taken for pattern. False, and nothing is done, where no span predicts better than nothing. `period` (samples) may be
 * that of a slower line of which this one is a harmonic: both wander together. Linear time.
 */
export function removeLine(values: Float64Array, reference: Float64Array, valid: Uint8Array, frequency: number, period = 1 / frequency): boolean {
  const block = Math.max(2, Math.round(period));
  const shifted = bringToZero(reference, valid, frequency, block);
  const span = bestSpan(sampleOf(shifted));
  if (span === null) return false;
  subtractLine(values, smooth(shifted, span, true), frequency, block);
  return true;
}

interface ShiftedBlocks {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly weight: Float64Array;
}

function bringToZero(reference: Float64Array, valid: Uint8Array, frequency: number, block: number): ShiftedBlocks {
  const count = Math.ceil(reference.length / block);
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const weight = new Float64Array(count);
  const turnRe = Math.cos(2 * Math.PI * frequency);
  const turnIm = -Math.sin(2 * Math.PI * frequency);
  let c = 1;
  let s = 0;
  for (let k = 0; k < count; k += 1) {
    const from = k * block;
    const end = Math.min(reference.length, from + block);
    if (k % AFRESH === 0) {
      c = Math.cos(2 * Math.PI * frequency * from);
      s = -Math.sin(2 * Math.PI * frequency * from);
    }
    let sumRe = 0;
    let sumIm = 0;
    let members = 0;
    for (let i = from; i < end; i += 1) {
      if (valid[i] === 1) {
        sumRe += reference[i] * c;
        sumIm += reference[i] * s;
        members += 1;
      }
      const next = c * turnRe - s * turnIm;
      s = c * turnIm + s * turnRe;
      c = next;
    }
    re[k] = sumRe;
    im[k] = sumIm;
    weight[k] = members;
  }
  return { re, im, weight };
}

/** Blocks from which the span is chosen: this many evenly spread pieces of this many blocks show how fast the phase wanders. */
const PIECES = 8;
const PIECE = 1024;

function sampleOf(shifted: ShiftedBlocks): ShiftedBlocks {
  const count = shifted.re.length;
  if (count <= 2 * PIECES * PIECE) return shifted;
  const every = Math.floor(count / PIECES);
  const pick = (all: Float64Array): Float64Array => {
    const some = new Float64Array(PIECES * PIECE);
    for (let k = 0; k < PIECES; k += 1) some.set(all.subarray(k * every, k * every + PIECE), k * PIECE);
    return some;
  };
  return { re: pick(shifted.re), im: pick(shifted.im), weight: pick(shifted.weight) };
}

/** Weighted triangular smoothing over `span` blocks to either side, with or without the middle block itself. */
function smooth({ re, im, weight }: ShiftedBlocks, span: number, withSelf: boolean): { re: Float64Array; im: Float64Array } {
  const half = Math.max(1, Math.ceil(span / 2));
  const mass = boxTwice(weight, half);
  const sumRe = boxTwice(re, half);
  const sumIm = boxTwice(im, half);
  const own = withSelf ? 0 : 2 * half + 1;
  const outRe = new Float64Array(re.length);
  const outIm = new Float64Array(re.length);
  for (let k = 0; k < re.length; k += 1) {
    const total = mass[k] - own * weight[k];
    if (total <= 0) continue;
    outRe[k] = (sumRe[k] - own * re[k]) / total;
    outIm[k] = (sumIm[k] - own * im[k]) / total;
  }
  return { re: outRe, im: outIm };
}

/** Two box sums of 2 * half + 1 blocks: a triangle whose middle weight is 2 * half + 1. Zero beyond the ends. */
function boxTwice(values: Float64Array, half: number): Float64Array {
  const count = values.length;
  // Running totals, wide enough for both passes to look beyond the ends.
  const width = 2 * half + 1;
  const once = new Float64Array(count + 4 * half + 1);
  let sum = 0;
  let total = 0;
  for (let i = 0; i < count + 2 * half; i += 1) {
    if (i < count) sum += values[i];
    if (i >= width) sum -= values[i - width];
    total += sum;
    once[i + 1] = total;
  }
  const out = new Float64Array(count);
  for (let i = 0; i < count; i += 1) out[i] = once[i + width] - once[i];
  return out;
}

function bestSpan(shifted: ShiftedBlocks): number | null {
  const none = predictionError(shifted, null);
  let best: number | null = null;
  let least = none * 0.995;
  for (const span of SPANS) {
    if (span * 2 > shifted.re.length) break;
    const error = predictionError(shifted, span);
    if (error < least) {
      least = error;
      best = span;
    }
  }
  return best;
}

function predictionError(shifted: ShiftedBlocks, span: number | null): number {
  const predicted = span === null ? null : smooth(shifted, span, false);
  let sum = 0;
  for (let k = 0; k < shifted.re.length; k += 1) {
    const w = shifted.weight[k];
    if (w === 0) continue;
    const re = shifted.re[k] - (predicted ? predicted.re[k] * w : 0);
    const im = shifted.im[k] - (predicted ? predicted.im[k] * w : 0);
    sum += re * re + im * im;
  }
  return sum;
}

function subtractLine(values: Float64Array, line: { re: Float64Array; im: Float64Array }, frequency: number, block: number): void {
  const { re, im } = line;
  const last = re.length - 1;
  const turnRe = Math.cos(2 * Math.PI * frequency);
  const turnIm = Math.sin(2 * Math.PI * frequency);
  const half = block >> 1;
  let c = 1;
  let s = 0;
  for (let k = -1; k <= last; k += 1) {
    // Between the centres of blocks k and k + 1 the line's amplitude and phase run straight.
    const a = Math.max(0, k);
    const b = Math.min(last, k + 1);
    const from = Math.max(0, k * block + half);
    const end = Math.min(values.length, (k + 1) * block + half);
    if ((k + 1) % AFRESH === 0) {
      c = Math.cos(2 * Math.PI * frequency * from);
      s = Math.sin(2 * Math.PI * frequency * from);
    }
    for (let i = from; i < end; i += 1) {
      const share = (i - (k * block + half)) / block;
      values[i] -= 2 * ((re[a] + share * (re[b] - re[a])) * c - (im[a] + share * (im[b] - im[a])) * s);
      const next = c * turnRe - s * turnIm;
      s = c * turnIm + s * turnRe;
      c = next;
    }
  }
}
