import { describe, expect, it } from 'vitest';
import { longRunVariance } from '../../analysis/condition/loss-scatter.ts';
import { CONDITION_PARAMETERS } from '../../analysis/condition/parameters.ts';
import { changePoints } from '../../analysis/signal/change-points.ts';
import { levelChanges } from '../../analysis/signal/level-changes.ts';
import { poissonCost } from '../support/poisson-cost.ts';
import { squaredErrorCost } from '../../analysis/signal/segment-cost.ts';
import { slidingMedian } from '../../analysis/signal/sliding-median.ts';
import { covering, f1Score } from '../support/change-point-scores.ts';
import { readSeries } from '../support/published-data.ts';
import exact from './data/changepoint/changepoint_reference.json';
import strucchange from './data/changepoint/strucchange_reference.json';
import annotations from './data/changepoint/tcpd_annotations.json';

/** Classic series with known changes; sources, licences and versions in data/changepoint/SOURCES.md. */
const nile = readSeries('changepoint/nile.csv');
const discoveries = readSeries('changepoint/discoveries.csv');
const wellLog = readSeries('changepoint/well_log_4050.csv');
/** Every sixth reading, as the readers of the annotated set saw it. */
const sixth = wellLog.filter((_, i) => i % 6 === 0);
const readers = annotations.well_log as Record<string, number[]>;
const relative = (found: number, wanted: number) => Math.abs(found / wanted - 1);

describe(`Nile at Aswan, against R's strucchange ${strucchange.strucchange}`, () => {
  const cost = squaredErrorCost(nile);
  /** Residual sum and information criterion as strucchange defines it: log likelihood of normal noise, each break and the variance a parameter. */
  const judged = (starts: readonly number[]) => {
    const bounds = [0, ...starts, nile.length];
    const rss = bounds.slice(1).reduce((sum, end, i) => sum + cost(bounds[i], end), 0);
    const n = nile.length;
    return { rss, bic: n * (Math.log(rss / n) + Math.log(2 * Math.PI) + 1) + Math.log(n) * (2 * starts.length + 2) };
  };

  it('finds the one change of 1898 (28), exactly', () => {
    const { sets: { nile: wanted } } = exact;
    const found = changePoints(nile.length, cost, wanted.l2_penalty_2logn_sigma2);
    expect(found.starts).toEqual([28]);
    expect(strucchange.nile.optimal_by_bic).toEqual([28]);
    expect(relative(found.objective, wanted.optimal[1] as number)).toBeLessThan(1e-9);
    const pruned = levelChanges(nile, new Float64Array(nile.length).fill(1), wanted.l2_penalty_2logn_sigma2);
    expect(pruned.starts).toEqual([28]);
    expect(relative(pruned.objective, wanted.optimal[1] as number)).toBeLessThan(1e-9);
  });

  it.each([[0, 2e6], [1, 1e5], [2, 4e4]])('%i changes in segments of 15 years or more: places, RSS and BIC to 1e-6', (count, penalty) => {
    const wanted = strucchange.nile.table.find((each) => each.m === count)!;
    const found = changePoints(nile.length, cost, penalty, strucchange.nile.h_obs);
    expect(found.starts).toEqual(wanted.breakpoints);
    const { rss, bic } = judged(found.starts);
    expect(relative(rss, wanted.rss)).toBeLessThan(1e-6);
    expect(relative(bic, wanted.bic)).toBeLessThan(1e-6);
    expect(relative(found.objective - count * penalty, wanted.rss)).toBeLessThan(1e-6);
  });
});

it('great inventions a year: 24, 29, 73 as R\'s changepoint package has them, Poisson counts, penalty 2 log 100', () => {
  const wanted = exact.sets.discoveries_poisson;
  const found = changePoints(discoveries.length, poissonCost(discoveries), 2 * Math.log(100));
  expect(found.starts).toEqual(wanted.published);
  expect(relative(found.objective, wanted.optimal[1] as number)).toBeLessThan(1e-9);
});

describe('well log', () => {
  const median = (values: Float64Array, width: number): Float64Array => {
    const half = (width - 1) / 2;
    const edged = Float64Array.from({ length: values.length + 2 * half }, (_, i) => values[Math.max(0, Math.min(values.length - 1, i - half))]);
    return slidingMedian(edged, new Uint8Array(edged.length).fill(1), width).values.slice(half, half + values.length);
  };
  const prepared: Record<string, Float64Array> = { raw: sixth, median5: median(sixth, 5), median9: median(sixth, 9) };

  it.each(exact.sets.well_log_675.penalised)('$preprocess, penalty $penalty: starts exact, objective to 1e-9, scores as stored', (wanted) => {
    const series = prepared[wanted.preprocess];
    const ones = new Float64Array(series.length).fill(1);
    for (const found of [changePoints(series.length, squaredErrorCost(series), wanted.beta), levelChanges(series, ones, wanted.beta)]) {
      expect(found.starts).toEqual(wanted.starts);
      expect(relative(found.objective, wanted.objective)).toBeLessThan(1e-9);
    }
    expect(f1Score(readers, wanted.starts)).toBeCloseTo(wanted.tcpd_f1, 10);
    expect(covering(readers, wanted.starts, series.length)).toBeCloseTo(wanted.tcpd_covering, 10);
  });

  it('4050 readings through a running median of 31: fifteen changes, exact', () => {
    const wanted = exact.sets.well_log_4050;
    const series = median(wellLog, 31);
    const ones = new Float64Array(series.length).fill(1);
    for (const found of [changePoints(series.length, squaredErrorCost(series), wanted.beta), levelChanges(series, ones, wanted.beta)]) {
      expect(found.starts).toEqual(wanted.starts);
      expect(relative(found.objective, wanted.objective)).toBeLessThan(1e-9);
    }
  });

  it('with the penalty that zones are sought with and noise from neighbouring readings, five readers agree: F1 and covering 0.78 and more', () => {
    const series = sixth.map((value) => value / 1e4);
    const weight = new Float64Array(series.length).fill(1);
    const penalty = CONDITION_PARAMETERS.lossChangePenalty.value * Math.log(series.length) * longRunVariance(series, weight, 1);
    const { starts } = levelChanges(series, weight, penalty);
    expect(f1Score(readers, starts)).toBeGreaterThanOrEqual(0.78);
    expect(covering(readers, starts, series.length)).toBeGreaterThanOrEqual(0.78);
  });
});
