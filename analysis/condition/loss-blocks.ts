import { medianInPlace } from '../signal/median.ts';
import { madInPlace, NORMAL_MAD } from '../signal/mad.ts';

/** LMA averaged in blocks; a block without enough valid samples is masked. */
export interface LossBlocks {
  readonly width: number; // samples
  readonly length: number; // m
  readonly mean: Float64Array;
  /** Share of the block's samples that are valid: 0 is masked. */
  readonly weight: Float64Array;
  /** Root mean square of one sample about its block, percent, robust. */
  readonly sampleNoise: Float64Array;
  /** The rope's usual sample noise. */
  readonly noise: number;
}

/** Samples further than this many standard deviations from their block's median count as if at that distance: a spike is no loss. */
const BOUND = 4;
/** Samples of a block that its median and scale rest on: they only bound spikes. */
const ENOUGH = 32;

/** Means of blocks of about `length` metres, spikes bounded. */
export function lossBlocks(values: Float64Array, mask: Uint8Array, step: number, length: number): LossBlocks {
  const width = Math.max(1, Math.round(length / step));
  const count = Math.ceil(values.length / width);
  const mean = new Float64Array(count);
  const weight = new Float64Array(count);
  const sampleNoise = new Float64Array(count);
  const scratch = new Float64Array(width);
  const noises: number[] = [];
  for (let block = 0; block < count; block += 1) {
    const from = block * width;
    const end = Math.min(values.length, from + width);
    let members = 0;
    for (let i = from; i < end; i += 1) members += mask[i];
    if (members < Math.max(1, 0.3 * width)) continue;
    const drawn = draw(values, mask, from, end, scratch);
    const centre = medianInPlace(scratch, 0, drawn);
    const scale = drawn >= 4 ? madInPlace(scratch, 0, drawn) * NORMAL_MAD : 0;
    const bound = scale > 0 ? BOUND * scale : Infinity;
    let sum = 0;
    for (let i = from; i < end; i += 1) if (mask[i] === 1) sum += Math.max(-bound, Math.min(bound, values[i] - centre));
    mean[block] = centre + sum / members;
    weight[block] = members / width;
    sampleNoise[block] = scale;
    if (scale > 0) noises.push(scale);
  }
  return { width, length: width * step, mean, weight, sampleNoise, noise: noises.length > 0 ? medianInPlace(Float64Array.from(noises)) : 0 };
}

/** Valid samples, every so many, into `scratch`; all of them where the stride hits none or few. */
function draw(values: Float64Array, mask: Uint8Array, from: number, end: number, scratch: Float64Array): number {
  for (let stride = Math.max(1, Math.floor((end - from) / ENOUGH)); ; stride = 1) {
    let count = 0;
    for (let i = from; i < end; i += stride) if (mask[i] === 1) scratch[count++] = values[i];
    if (count >= ENOUGH / 4 || stride === 1) return count;
  }
}
