import { madInPlace } from './mad.ts';

/**
 * Median absolute deviation by position: one value for each hop of `hop` samples, from the valid samples of a window of
 * `width` centred there; null where fewer than `least` are valid. No scale. Value j stands at sample j * hop + hop / 2.
 * Cost: length times width over hop.
 */
export function slidingMad(values: Float64Array, valid: Uint8Array, width: number, hop: number, least: number): (number | null)[] {
  const scratch = new Float64Array(width + 1);
  const found: (number | null)[] = [];
  for (let centre = hop >> 1; centre < values.length; centre += hop) {
    const end = Math.min(values.length, centre + (width >> 1) + 1);
    let members = 0;
    for (let i = Math.max(0, centre - (width >> 1)); i < end; i += 1) if (valid[i] === 1) scratch[members++] = values[i];
    found.push(members < least ? null : madInPlace(scratch, 0, members));
  }
  return found;
}
