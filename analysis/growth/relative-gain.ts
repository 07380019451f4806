import type { Interval } from '../rope/interval.ts';
import { medianAbsoluteDeviation, NORMAL_MAD } from '../signal/mad.ts';
import { GROWTH } from './parameters.ts';
import { meanOver } from './window-means.ts';
import type { RunningSums } from './window-means.ts';

export interface RelativeGain {
  readonly gain: number;
  readonly uncertainty: number; // one sigma, share of the gain
}

/**
 * Scale of every scan relative to the common mean of all, found from the rope's own permanent texture outside `excluded`.
 * Places that may grow are excluded: fitting a scale to them would hide their growth. Where the texture does not
 * stand out of the noise the gain stays 1, with the uncertainty that common practice grants an instrument.
 * Errors-in-variables fit (Deming 1943) of each scan against the mean of the others.
 */
export function relativeGains(surveys: readonly RunningSums[], excluded: readonly Interval<'rope'>[], reach: Interval<'rope'>): RelativeGain[] {
  const unknown = { gain: 1, uncertainty: GROWTH.gainUncertainty };
  if (surveys.length < 2) return surveys.map(() => unknown);
  const rows = textureWindows(surveys, excluded, reach);
  const gains = surveys.map(() => 1);
  const uncertainties = surveys.map(() => 0);
  for (let pass = 0; pass < 3; pass += 1) {
    for (let index = 0; index < surveys.length; index += 1) {
      // Each fit uses the newest gains of the others: fitting all against old ones would count every difference twice.
      const fit = fitAgainstOthers(rows, gains, index);
      if (fit === null) return surveys.map(() => unknown);
      gains[index] = fit.gain;
      uncertainties[index] = fit.uncertainty;
    }
  }
  const mean = Math.exp(gains.reduce((sum, gain) => sum + Math.log(gain), 0) / gains.length);
  return gains.map((gain, index) => ({ gain: gain / mean, uncertainty: uncertainties[index] }));
}

/** Means over short windows that every scan saw, one row per window, each scan's own mean level removed. */
function textureWindows(surveys: readonly RunningSums[], excluded: readonly Interval<'rope'>[], reach: Interval<'rope'>): number[][] {
  const rows: number[][] = [];
  let next = 0;
  for (let from: number = reach.from; from + GROWTH.gainWindow <= reach.to; from += GROWTH.gainWindow) {
    const to = from + GROWTH.gainWindow;
    while (next < excluded.length && excluded[next].to <= from) next += 1;
    if (next < excluded.length && excluded[next].from < to) continue;
    const means = surveys.map((survey) => meanOver(survey, from, to));
    if (means.every((each) => each.share > 0.9)) rows.push(means.map((each) => each.mean));
  }
  return rows;
}

function fitAgainstOthers(rows: readonly number[][], gains: readonly number[], index: number): RelativeGain | null {
  const others = gains.length - 1;
  let x = rows.map((row) => row.reduce((sum, value, j) => (j === index ? sum : sum + value / gains[j]), 0) / others);
  let y = rows.map((row) => row[index]);
  let fit = deming(x, y, others);
  for (let pass = 0; pass < 2 && fit !== null; pass += 1) {
    const residuals = y.map((value, i) => value - fit!.offset - fit!.gain * x[i]);
    const limit = 4 * NORMAL_MAD * medianAbsoluteDeviation(Float64Array.from(residuals));
    const keep = residuals.map((residual) => Math.abs(residual) <= limit);
    x = x.filter((_, i) => keep[i]);
    y = y.filter((_, i) => keep[i]);
    fit = deming(x, y, others);
  }
  return fit;
}

/** Neighbouring windows share texture and the scans share their mean: measured on generated ropes, the error is about this much larger than of independent windows. */
const WINDOWS_ALIKE = 1.3;

/** Deming regression of y on x with noise variance of y `ratio` times that of x. Null where the two hardly go together. */
function deming(x: readonly number[], y: readonly number[], ratio: number): (RelativeGain & { offset: number }) | null {
  const n = x.length;
  if (n < 30) return null;
  const meanX = x.reduce((a, b) => a + b, 0) / n;
  const meanY = y.reduce((a, b) => a + b, 0) / n;
  let sxx = 0, syy = 0, sxy = 0;
  for (let i = 0; i < n; i += 1) {
    sxx += (x[i] - meanX) ** 2;
    syy += (y[i] - meanY) ** 2;
    sxy += (x[i] - meanX) * (y[i] - meanY);
  }
  const correlation = sxy / Math.sqrt(sxx * syy);
  if (!(correlation > 0.3)) return null;
  const difference = syy - ratio * sxx;
  const gain = (difference + Math.sqrt(difference ** 2 + 4 * ratio * sxy ** 2)) / (2 * sxy);
  const uncertainty = (WINDOWS_ALIKE * Math.sqrt((1 - correlation ** 2) / (n - 2))) / correlation;
  return uncertainty < GROWTH.gainUncertainty * 2 && gain > 0.5 && gain < 2 ? { gain, uncertainty, offset: meanY - gain * meanX } : null;
}
