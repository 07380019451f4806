import { profileAt } from '../rope/profile-at.ts';
import type { Survey } from '../rope/survey.ts';
import type { InspectionIntake } from './read-folder.ts';
import type { Assessment } from './schema.ts';

type InspectionOutput = Assessment['inspections'][number];

/** One inspection that took part in the judgement. */
export function writeInspection(survey: Survey): InspectionOutput {
  return {
    id: survey.id, date: survey.date, trips: survey.trips, used: true,
    coverage: survey.covered.map((each) => ({ from_m: each.from, to_m: each.to })),
    alignment: alignmentOf(survey), faults: faultsOf(survey), zones: zonesOf(survey),
    quality: survey.quality.map((finding) => ({ code: finding.code, level: finding.level, message: finding.message, from_m: finding.where.from, to_m: finding.where.to })),
    detectability: detectabilityOf(survey), baseline: survey.condition.baseline.basis,
    repeatability: { lma_percent: survey.repeatability.lossPercent, lf: survey.repeatability.fault },
    parameters: { ...survey.condition.parameters },
  };
}

/** An inspection that could not be used: it covers nothing, whatever its files hold. */
export function writeUnusedInspection(intake: InspectionIntake): InspectionOutput {
  const quality = intake.runs.flatMap((run) => run.quality.map((finding) => ({
    // Without a map these are the file's own positions; the message says so.
    code: finding.code, level: finding.level, message: `${finding.message} (positions of the file ${run.file} itself)`, from_m: finding.where.from as number, to_m: finding.where.to as number,
  })));
  return {
    id: intake.record.id, date: intake.record.date, trips: intake.record.trips ?? null, used: false, coverage: [], alignment: null, faults: [], zones: [],
    quality, detectability: [], baseline: 'not used', repeatability: { lma_percent: null, lf: null }, parameters: {},
  };
}

function alignmentOf({ map }: Survey): InspectionOutput['alignment'] {
  return {
    reversed: map.reversed,
    knots: map.knots.map((knot) => ({ measured_m: knot.measured, rope_m: knot.rope })),
    uncertainty_m: map.uncertainty.map((point) => ({ measured_m: point.measured, value_m: point.value })),
    confidence: map.confidence, basis: map.basis,
    slips: map.slips.map((slip) => ({ measured_m: slip.measured, size_m: slip.size })),
    remarks: [...map.remarks],
  };
}

function faultsOf(survey: Survey): InspectionOutput['faults'] {
  return survey.condition.faults.map((fault) => ({
    id: fault.id, position_m: fault.position, loss_percent: fault.lossPercent, amplitude: fault.amplitude, snr: fault.snr, width_m: fault.width,
    position_uncertainty_m: fault.positionUncertainty, loss_calibration: fault.lossCalibration,
    count_low: fault.count.low, count_estimate: fault.count.estimate, count_high: fault.count.high, depth: 'unknown',
  }));
}

function zonesOf(survey: Survey): InspectionOutput['zones'] {
  return survey.condition.zones.map((zone) => ({
    id: zone.id, from_m: zone.where.from, to_m: zone.where.to, kind: zone.kind, mean_loss_percent: zone.meanLossPercent, peak_loss_percent: zone.peakLossPercent,
    texture_ratio: zone.textureRatio, uncertainty_percent: zone.uncertaintyPercent, edge_uncertainty_m: zone.edgeUncertainty, loss_range_percent: zone.lossRangePercent,
  }));
}

/** Places along the rope at which detectability is written: the whole profile would fill the file. */
const DETECTABILITY_POINTS = 120;

/** For each of up to 120 equal parts of the profile the worst, that is largest, smallest loss and amplitude that would have been found. */
function detectabilityOf({ condition }: Survey): InspectionOutput['detectability'] {
  const loss = condition.smallestZoneLoss;
  const fault = condition.smallestFaultAmplitude;
  const axis = loss.positions.length > 0 ? loss.positions : fault.positions;
  const size = Math.max(1, Math.ceil(axis.length / DETECTABILITY_POINTS));
  const parts: InspectionOutput['detectability'] = [];
  for (let first = 0; first < axis.length; first += size) {
    const part = axis.slice(first, first + size);
    const worst = (profile: typeof loss): number | null => part.reduce<number | null>((most, at) => larger(most, profileAt(profile, at)), null);
    parts.push({ position_m: (part[0] + part[part.length - 1]) / 2, smallest_loss_percent: worst(loss), smallest_fault_amplitude: worst(fault) });
  }
  return parts;
}

function larger(a: number | null, b: number | null): number | null {
  return a === null || (b !== null && b > a) ? b : a;
}
