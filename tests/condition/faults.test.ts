import { describe, expect, it } from 'vitest';
import { drawConditions } from '../support/lab-conditions.ts';
import { cumulativeStdNormalProbability as normalShare } from 'simple-statistics';
import { addScore, emptyScore, laboratoryContext, medianOf, share } from '../support/lab-score.ts';
import { pulseValue } from '../support/lab-pulses.ts';
import { makeLabTrace } from '../support/lab-trace.ts';
import { labRandom } from '../support/lab-random.ts';
import type { LabFault } from '../support/lab-trace.ts';
import { assessLab, assessTrace, breakAt, quietRope, zoneAt } from '../support/quiet-rope.ts';
import { assessCondition } from '../../analysis/condition/assess-condition.ts';
import type { Fault } from '../../analysis/condition/condition.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';

/** The fault called at a place: on a rope of this length noise may add one elsewhere. */
const calledAt = (faults: readonly Fault<'measured'>[], position: number) => faults.filter((fault) => Math.abs(fault.position - position) < 0.05);
/** Breaks far apart that show what one break looks like on this rope. */
const others = (from: number, to: number): ReturnType<typeof breakAt>[] => Array.from({ length: 8 }, (_, i) => breakAt(from + (i * (to - from)) / 7, 14 + i));

const span = (from: number, to: number) => ({ from: measuredPosition(from), to: measuredPosition(to) });

describe('faults on random laboratory ropes, against what was laid into them (reach of the work: 98 % from 6, 90 % from 4 to 6, 0.3 false per 100 m, 10 mm)', () => {
  it('are found, placed and not invented; zones with them', async () => {
    const score = emptyScore();
    for (let seed = 201; seed <= 212; seed += 1) {
      const conditions = drawConditions(seed);
      addScore(score, conditions, await assessCondition(makeLabTrace(conditions), laboratoryContext(conditions)));
    }
    expect(share(score.strong)).toBeGreaterThanOrEqual(0.98);
    expect(share(score.weak)).toBeGreaterThanOrEqual(0.9);
    expect((100 * score.falseCalls) / score.length).toBeLessThanOrEqual(0.3);
    expect(medianOf(score.placeErrors)).toBeLessThanOrEqual(0.01);
    expect(score.zones.found / score.zones.of).toBeGreaterThanOrEqual(0.95);
    expect(score.zones.kindRight / score.zones.found).toBeGreaterThanOrEqual(0.95);
    expect(medianOf(score.overlaps)).toBeGreaterThanOrEqual(0.85);
    expect(medianOf(score.meanErrors.map(Math.abs))).toBeLessThanOrEqual(0.15);
    expect(score.meanErrors.filter((error) => Math.abs(error) <= 0.15).length / score.meanErrors.length).toBeGreaterThanOrEqual(0.9);
    expect(score.zones.invented).toBe(0);
  }, 120_000);

  it('sound ropes show no zone and few false calls', async () => {
    const score = emptyScore();
    for (let seed = 301; seed <= 308; seed += 1) {
      const conditions = drawConditions(seed, true);
      addScore(score, conditions, await assessCondition(makeLabTrace(conditions), laboratoryContext(conditions)));
    }
    expect(score.zones.invented).toBe(0);
    expect((100 * score.falseCalls) / score.length).toBeLessThanOrEqual(0.3);
  }, 120_000);
});

describe('pulses that are a sample or two wide, or no form of the bank, at 4 to 6', () => {
  it.each([
    ['lorentz', 0.01, 0.022, 0.9], ['lorentz', 0.005, 0.015, 0.9], ['lorentz', 0.02, 0.032, 0.7], ['bell', 0.01, 0.016, 0.85], ['narrow-hat', 0.005, 0.013, 0.75],
  ] as const)('%s on samples %d m apart, %d m wide: found nearly as often as by one who knows form and place (at least %d of it)', async (form, step, width, asked) => {
    let [found, calls, ideal] = [0, 0, 0];
    for (let seed = 1; seed <= 9; seed += 1) {
      // Distances of 9.17 m fall on samples and between them.
      const faults = Array.from({ length: 20 }, (_, i) => breakAt(3 + i * 9.17, 4 + ((i * 0.618) % 1) * 2, { form, r: width / 0.768 }));
      const condition = await assessLab(quietRope({ seed, step, length: 190, faults }));
      const threshold = Number(condition.parameters.faultThresholdFound);
      found += faults.filter((truth) => calledAt(condition.faults, truth.position).length > 0).length;
      calls += condition.faults.length;
      // In white noise the score of a matched filter is normal about the root of the sum of the pulse's squares (North 1943, from memory).
      for (const truth of faults) ideal += normalShare(normOf(truth, step) - threshold);
    }
    expect(found / ideal).toBeGreaterThanOrEqual(asked);
    expect(calls - found).toBeLessThanOrEqual(6);
  });
});

/** Root of the sum of squares of a pulse's samples, over noise. */
function normOf({ position, snr, form, r }: LabFault, step: number): number {
  let sum = 0;
  for (let i = Math.floor((position - 0.25) / step); i * step < position + 0.25; i += 1) sum += pulseValue(form, i * step - position, r) ** 2;
  return snr * Math.sqrt(sum);
}

describe('what is said of one fault', () => {
  it('sign and size as in the file, width at half height, signal over noise, place within its bound', async () => {
    const faults = [breakAt(50.0013, 12), breakAt(100.0031, 15, { sign: -1 }), breakAt(150.002, 20), ...others(160, 195)];
    const found = (await assessLab(quietRope({ faultScale: 14, faultOffset: 0.7, faults }))).faults;
    faults.forEach((truth) => {
      const [fault, ...more] = calledAt(found, truth.position);
      expect(more).toEqual([]);
      expect(Math.abs(fault.position - truth.position)).toBeLessThan(fault.positionUncertainty);
      expect(Math.sign(fault.amplitude)).toBe(truth.sign);
      expect(Math.abs(fault.amplitude / (14 * truth.sign * truth.snr) - 1)).toBeLessThan(0.15);
      expect(Math.abs(fault.snr / truth.snr - 1)).toBeLessThan(0.15);
      expect(Math.abs(fault.width / (0.768 * truth.r) - 1)).toBeLessThan(0.2);
      expect(fault.count).toEqual({ low: 1, estimate: 1, high: 1 });
      expect(fault.shape).toBe('single');
    });
  });
  it.each([['radial', 1], ['coil', -1]] as const)('a pair of opposite peaks (%s, sign %i) is one fault at its middle', async (form, sign) => {
    const { faults } = await assessLab(quietRope({ faults: [breakAt(60, 14, { form, sign }), breakAt(120, 14, { form, sign })] }));
    for (const place of [60, 120]) {
      const called = calledAt(faults, place);
      expect(called.map((fault) => fault.shape !== 'single')).toEqual([true]);
      expect(Math.abs(called[0].position - place)).toBeLessThan(0.003);
    }
  });
  it('is uncalibrated unless a wire or a seen break gives the scale', async () => {
    const conditions = quietRope({ faults: [breakAt(50, 12), breakAt(120, 24)] });
    const both = (faults: readonly Fault<'measured'>[]) => [50, 120].map((place) => calledAt(faults, place)[0]);
    const without = both((await assessLab(conditions)).faults);
    expect(without.map((fault) => [fault.lossPercent, fault.lossCalibration])).toEqual([[null, 'uncalibrated'], [null, 'uncalibrated']]);
    const wire = both((await assessLab(conditions, { knownWireCalibration: 0.05 })).faults);
    expect(wire[0].lossCalibration).toBe('known-wire');
    expect(wire[0].lossPercent!).toBeCloseTo(0.05 * Math.abs(wire[0].amplitude), 9);
    const seen = both((await assessLab(conditions, { outerWireSharePercent: 0.8, visualBreaks: [{ position: 50.2, count: 1 }] })).faults);
    expect(seen[0].lossCalibration).toBe('visual-breaks');
    expect(seen[0].lossPercent!).toBeCloseTo(0.8, 6);
    expect(seen[1].lossPercent! / seen[0].lossPercent!).toBeCloseTo(seen[1].amplitude / seen[0].amplitude, 6);
  });
});

describe('clusters', () => {
  const cluster = async (apart: number, seed: number) => {
    const { faults } = await assessLab(quietRope({ seed, length: 100, step: 0.002, faults: [breakAt(50, 16), breakAt(50 + apart, 14), ...others(60, 95)] }));
    return faults.filter((fault) => fault.position > 49.9 && fault.position < 50.3);
  };
  it('two breaks three pulse widths apart and more are two, each single', async () => {
    for (const apart of [0.06, 0.09, 0.15]) {
      const found = await cluster(apart, 3);
      expect(found.map((fault) => fault.count.estimate)).toEqual([1, 1]);
      expect(Math.abs(found[1].position - found[0].position - apart)).toBeLessThan(0.004);
    }
  });
  it('nearer than the pulse width allows they are told apart, or one indication whose count holds two: never a sure single', async () => {
    for (const apart of [0.014, 0.018, 0.022, 0.026, 0.03, 0.036, 0.042, 0.05]) {
      for (const seed of [1, 2, 3]) {
        const found = await cluster(apart, seed);
        expect(found.reduce((sum, fault) => sum + fault.count.high, 0), `${1000 * apart} mm apart`).toBeGreaterThanOrEqual(2);
        expect(found.reduce((sum, fault) => sum + fault.count.low, 0)).toBeLessThanOrEqual(2);
        for (const { count } of found) expect(count.low <= count.estimate && count.estimate <= count.high).toBe(true);
      }
    }
  }, 60_000);
  it('breaks far from others are single where the rope shows what one looks like, and may be two where it does not', async () => {
    for (const seed of [1, 2, 3]) {
      const faults = others(10, 90);
      const found = (await assessLab(quietRope({ seed, length: 100, step: 0.002, faults }))).faults;
      for (const { position } of faults) expect(calledAt(found, position).map((fault) => fault.count)).toEqual([{ low: 1, estimate: 1, high: 1 }]);
      const alone = (await assessLab(quietRope({ seed, length: 100, step: 0.002, faults: [breakAt(30, 30)] }))).faults;
      expect(calledAt(alone, 30).map((fault) => fault.count)).toEqual([{ low: 1, estimate: 1, high: 2 }]);
    }
  });
});

describe('gaps, blind lengths and known features', () => {
  const conditions = quietRope({ faults: [breakAt(30, 20), breakAt(60, 20), breakAt(90.3, 20)], zones: [zoneAt(120, 140, 4)] });
  it.each([['folded over by the sampling', 0.01, 2.2163], ['of whole strands', 0.005, 11.3]])('a pattern %s that is all there is, but for the rounding of the file and a little noise, is no fault', async (_, step, period) => {
    for (const noise of [0, 0.01, 0.03]) {
      const { normal } = labRandom(7);
      const values = Float64Array.from({ length: 20_000 }, (_each, i) => Math.round(100 * (3 * Math.sin((2 * Math.PI * i) / period) + noise * normal())) / 100);
      const conditions = quietRope({ step, length: 20_000 * step });
      const trace = { ...makeLabTrace(conditions), start: measuredPosition(0), length: values.length, loss: null, fault: { values, valid: new Uint8Array(values.length).fill(1) }, speed: null };
      expect((await assessTrace(trace, conditions)).faults).toEqual([]);
    }
  });

  it('what lies in a gap of the signal is not called, and the gap makes no fault at its shores', async () => {
    const gapped = quietRope({ faults: conditions.faults, zones: conditions.zones, gaps: [{ from: 58, to: 63 }, { from: 150, to: 150.4 }] });
    const found = await assessLab(gapped);
    expect([30, 60, 90.3].map((place) => calledAt(found.faults, place).length)).toEqual([1, 0, 1]);
    for (const shore of [58, 63, 150, 150.4]) expect(found.faults.filter((fault) => Math.abs(fault.position - shore) < 0.5)).toEqual([]);
    expect(found.zones).toHaveLength(1);
    const { valid } = found.lossFromBaseline!;
    expect(valid[Math.round(60 / 0.005)]).toBe(0);
    expect(valid[Math.round(150.2 / 0.005)]).toBe(0);
  });
  it('sockets, splices and blind lengths are never findings', async () => {
    const trace = makeLabTrace(conditions);
    // A splice: more metal, off-scale pulses at its tucks.
    for (let i = Math.round(160 / 0.005); i < Math.round(180 / 0.005); i += 1) {
      trace.loss!.values[i] -= 9;
      if (i % 700 < 6) trace.fault!.values[i] += 80;
    }
    const found = await assessTrace(trace, conditions, { known: [span(158, 182)], blind: [span(89, 91)] });
    expect([30, 60, 90.3].map((place) => calledAt(found.faults, place).length)).toEqual([1, 1, 0]);
    expect(found.faults.filter((fault) => fault.position > 158 && fault.position < 182)).toEqual([]);
    expect(found.zones.map((zone) => Math.round(zone.where.from))).toEqual([120]);
    const bare = await assessTrace(trace, conditions);
    expect(bare.faults.some((fault) => fault.position > 158 && fault.position < 182)).toBe(true);
  });
  it('a trace without a channel, or with nothing valid, gives no findings and says so', async () => {
    const trace = makeLabTrace(conditions);
    const noLoss = await assessTrace({ ...trace, loss: null }, conditions);
    expect(noLoss.zones).toEqual([]);
    expect(noLoss.lossFromBaseline).toBeNull();
    expect(noLoss.baseline.basis).toContain('no LMA');
    const noFault = await assessTrace({ ...trace, fault: null }, conditions);
    expect(noFault.faults).toEqual([]);
    expect(noFault.smallestFaultAmplitude.values).toEqual([]);
    expect(noFault.zones.map((zone) => zone.kind)).toEqual(['loss']);
    const nothing = { values: trace.fault!.values, valid: new Uint8Array(trace.length) };
    const empty = await assessTrace({ ...trace, fault: nothing, loss: nothing }, conditions);
    expect([empty.faults, empty.zones, empty.smallestZoneLoss.values]).toEqual([[], [], []]);
  });
});
