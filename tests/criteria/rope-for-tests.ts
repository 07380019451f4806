import type { Fault, Zone } from '../../analysis/condition/condition.ts';
import type { Evidence } from '../../analysis/criteria/criterion.ts';
import type { VisualNote } from '../../analysis/intake/visual-note.ts';
import { completeGeometry } from '../../analysis/rope/complete-geometry.ts';
import type { RopeData } from '../../analysis/rope/record.ts';
import type { Survey } from '../../analysis/rope/survey.ts';
import { measuredPosition, ropePosition } from '../../analysis/rope/units.ts';

/** Small ropes and inspections made by hand, so that every expected number can be worked out on paper. */
export function geometryOf(rope: Partial<RopeData>) {
  return completeGeometry({ id: 'rope', ...rope } as RopeData);
}

export interface SurveyParts {
  id?: string;
  date?: string;
  length?: number; // m
  step?: number; // m
  start?: number;
  loss?: (position: number) => number;
  noLma?: boolean;
  noLf?: boolean;
  /** Lengths not inspected. */
  blind?: [number, number][];
  faults?: { at: number; low?: number; estimate?: number; high?: number; lossPercent?: number | null }[];
  zones?: Partial<Zone<'rope'>>[];
  notes?: Partial<VisualNote>[];
  repeatability?: number | null;
}

export function surveyOf(parts: SurveyParts): Survey {
  const { length = 100, step = 0.01, start = step / 2 } = parts;
  const samples = Math.round(length / step);
  const values = new Float64Array(samples);
  const valid = new Uint8Array(samples).fill(1);
  for (let i = 0; i < samples; i += 1) {
    const at = start + i * step;
    values[i] = parts.loss?.(at) ?? 0;
    if (parts.blind?.some(([from, to]) => at >= from && at < to)) {
      valid[i] = 0;
      values[i] = 777;
    }
  }
  const covered = unblind(length, parts.blind ?? []);
  return {
    id: parts.id ?? 'i1', date: parts.date ?? '2026-03-31', trips: null, runs: [], quality: [],
    map: { knots: [{ measured: measuredPosition(0), rope: ropePosition(0) }, { measured: measuredPosition(length), rope: ropePosition(length) }], reversed: false, uncertainty: [], confidence: 1, basis: 'test', loopLength: null, slips: [], remarks: [] },
    measured: null as never,
    rope: { start: ropePosition(start), step, length: samples, loss: parts.noLma ? null : { values, valid }, fault: parts.noLf ? null : { values: new Float64Array(samples), valid }, faultUnit: 'mV', speed: null, averagingLength: 0.3 },
    covered: covered.map(([from, to]) => ({ from: ropePosition(from), to: ropePosition(to) })),
    condition: {
      faults: (parts.faults ?? []).map(faultOf), zones: (parts.zones ?? []).map(zoneOf), noiseOfLoss: 0.1, strandSpacing: null, parameters: {}, lossFromBaseline: null,
      faultNoise: empty, smallestZoneLoss: empty, smallestFaultAmplitude: empty, texture: empty, baseline: { where: null, level: empty, basis: 'test' },
    },
    repeatability: { lossPercent: parts.repeatability === undefined ? 0.1 : parts.repeatability, fault: null },
    mapUncertainty: empty,
    notes: (parts.notes ?? []).map((note, index) => noteOf(note, index, parts.id ?? 'i1')),
  };
}

const empty = { positions: [], values: [] };

function unblind(length: number, blind: [number, number][]): [number, number][] {
  const free: [number, number][] = [];
  let from = 0;
  for (const [a, b] of [...blind].sort((p, q) => p[0] - q[0])) {
    if (a > from) free.push([from, a]);
    from = Math.max(from, b);
  }
  if (from < length) free.push([from, length]);
  return free;
}

function faultOf(part: NonNullable<SurveyParts['faults']>[number], index: number): Fault<'rope'> {
  const { at, low = 1, estimate = 1, high = 1, lossPercent = null } = part;
  return { id: `f${index}`, position: ropePosition(at), lossPercent, lossCalibration: lossPercent === null ? 'uncalibrated' : 'known-wire', amplitude: 1, snr: 10, width: 0.02, positionUncertainty: 0.01, count: { low, estimate, high }, shape: 'single' };
}

function zoneOf(part: Partial<Zone<'rope'>>, index: number): Zone<'rope'> {
  return { id: `z${index}`, where: { from: ropePosition(0), to: ropePosition(1) }, edgeUncertainty: 0.1, kind: 'loss', meanLossPercent: 0, peakLossPercent: 0, textureRatio: 1, uncertaintyPercent: 0.2, lossRangePercent: null, ...part };
}

function noteOf(part: Partial<VisualNote>, index: number, inspection: string): VisualNote {
  const from = part.from ?? 0;
  return { id: `n${index}`, inspection, to: from, kind: 'other', kindAsWritten: '', value: null, unit: '', severity: '', photo: null, remark: '', ...part, from };
}

export function evidenceOf(rope: Partial<RopeData>, surveys: Survey[], more: Partial<Evidence> = {}): Evidence {
  return {
    geometry: geometryOf(rope), application: rope.application ?? '', ropeLength: rope.length_m ?? null, loopLength: rope.loop ? rope.length_m ?? null : null,
    installed: rope.installed ?? null, surveys, places: [], landmarks: [], events: [], ...more,
  };
}
