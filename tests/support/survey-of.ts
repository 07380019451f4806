import type { Condition } from '../../analysis/condition/condition.ts';
import type { Survey } from '../../analysis/rope/survey.ts';
import { measuredPosition, ropePosition } from '../../analysis/rope/units.ts';

interface Given {
  readonly id: string;
  readonly date: string;
  readonly step: number;
  readonly loss: Float64Array;
  readonly unseen?: [number, number];
  readonly zones?: readonly [number, number, number][]; // from, to, mean loss
  readonly faults?: readonly [number, number][]; // position, amplitude
}

/** A survey as the pipeline would hand it on, for tests of the stages after condition: LF noise is 1, map exact. */
export function surveyOf(given: Given): Survey {
  const { step, loss } = given;
  const length = loss.length;
  const valid = new Uint8Array(length).fill(1);
  if (given.unseen) valid.fill(0, Math.round(given.unseen[0] / step), Math.round(given.unseen[1] / step));
  const end = length * step;
  const covered = given.unseen ? [[0, given.unseen[0]], [given.unseen[1], end]] : [[0, end]];
  const fault = { values: faultSignal(length, step, given.faults ?? []), valid };
  const trace = { step, length, loss: { values: loss, valid }, fault, faultUnit: 'mV', speed: null, averagingLength: 0.3 };
  const flat = (value: number) => ({ positions: [ropePosition(0), ropePosition(end)], values: [value, value] });
  const condition: Condition<'rope'> = {
    faults: (given.faults ?? []).map(([at, amplitude], i) => ({
      id: `${given.id}-f${i}`, position: ropePosition(at), lossPercent: null, lossCalibration: 'uncalibrated', amplitude, snr: amplitude, width: 0.02, positionUncertainty: 0.02,
      count: { low: 1, estimate: 1, high: 1 }, shape: 'single',
    })),
    zones: (given.zones ?? []).map(([from, to, mean], i) => ({
      id: `${given.id}-z${i}`, where: { from: ropePosition(from), to: ropePosition(to) }, edgeUncertainty: 0.3, kind: 'wear', meanLossPercent: mean, peakLossPercent: mean, textureRatio: 1, uncertaintyPercent: 0.1, lossRangePercent: null,
    })),
    faultNoise: flat(1), smallestZoneLoss: flat(0.5), smallestFaultAmplitude: flat(5), baseline: { where: null, level: flat(0), basis: 'test' }, lossFromBaseline: null,
    texture: flat(1), noiseOfLoss: 0.1, strandSpacing: null, parameters: {},
  };
  return {
    id: given.id, date: given.date, trips: null, runs: [],
    map: { knots: [{ measured: measuredPosition(0), rope: ropePosition(0) }, { measured: measuredPosition(end), rope: ropePosition(end) }], reversed: false, uncertainty: [], confidence: 1, basis: 'test', loopLength: null, slips: [], remarks: [] },
    measured: { ...trace, start: measuredPosition(0) }, rope: { ...trace, start: ropePosition(0) },
    covered: covered.map(([from, to]) => ({ from: ropePosition(from), to: ropePosition(to) })), condition, quality: [], repeatability: { lossPercent: null, fault: null }, mapUncertainty: flat(0.02), notes: [],
  };
}

/** Pulses two bins wide in noise that never comes near the threshold, so that the tests turn on the pulses alone. */
function faultSignal(length: number, step: number, faults: readonly [number, number][]): Float64Array {
  const values = Float64Array.from({ length }, (_, i) => Math.sin(i * 12.9898) * 1.2);
  for (const [at, amplitude] of faults) values[Math.round(at / step)] += amplitude;
  return values;
}
