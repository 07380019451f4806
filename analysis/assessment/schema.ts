import { z } from 'zod';

/**
 * assessment.json, the output that outside checks read. Names and meanings are fixed; fields may be added, never renamed.
 * All positions are metres of rope position unless the name says `measured`. Dates are ISO 8601.
 */
const number = z.number();
const span = { from_m: number, to_m: number };

export const faultSchema = z.object({
  id: z.string(), position_m: number, loss_percent: number.nullable(), amplitude: number, snr: number, width_m: number, position_uncertainty_m: number,
  loss_calibration: z.enum(['known-wire', 'visual-breaks', 'uncalibrated']),
  count_low: number, count_estimate: number, count_high: number, depth: z.string(),
});

export const zoneSchema = z.object({
  id: z.string(), ...span, kind: z.enum(['corrosion', 'wear', 'loss']),
  mean_loss_percent: number, peak_loss_percent: number, texture_ratio: number, uncertainty_percent: number, edge_uncertainty_m: number,
  loss_range_percent: z.object({ low: number, high: number }).nullable(),
});

export const alignmentSchema = z.object({
  reversed: z.boolean(),
  knots: z.array(z.object({ measured_m: number, rope_m: number })),
  uncertainty_m: z.array(z.object({ measured_m: number, value_m: number })),
  confidence: number, basis: z.string(),
  slips: z.array(z.object({ measured_m: number, size_m: number })),
  remarks: z.array(z.string()),
});

export const qualitySchema = z.object({ code: z.string(), level: z.enum(['info', 'warning', 'reject']), message: z.string(), ...span });

export const detectabilitySchema = z.object({ position_m: number, smallest_loss_percent: number.nullable(), smallest_fault_amplitude: number.nullable() });

export const inspectionSchema = z.object({
  id: z.string(), date: z.string(), trips: number.nullable(), used: z.boolean(),
  coverage: z.array(z.object(span)),
  alignment: alignmentSchema.nullable(),
  faults: z.array(faultSchema),
  zones: z.array(zoneSchema),
  quality: z.array(qualitySchema),
  detectability: z.array(detectabilitySchema),
  baseline: z.string(),
  repeatability: z.object({ lma_percent: number.nullable(), lf: number.nullable() }),
  parameters: z.record(z.string(), number),
});

export const growthSchema = z.object({
  id: z.string(), subject: z.enum(['fault', 'zone']), ...span,
  state: z.enum(['new', 'growing', 'stable', 'receding', 'not-found', 'not-inspected']),
  rate_per_year: number.nullable(), rate_low: number.nullable(), rate_high: number.nullable(), p_value: number.nullable(),
  /** The same by a thousand trips; null without trips on record. */
  rate_per_thousand_trips: number.nullable(), trip_rate_low: number.nullable(), trip_rate_high: number.nullable(),
  members: z.array(z.object({ inspection: z.string(), ref: z.string() })),
  reason: z.string(),
  series: z.array(z.object({ inspection: z.string(), date: z.string(), trips: number.nullable(), value: number, uncertainty: number })),
});

export const provenanceSchema = z.enum(['published', 'memory', 'common-practice', 'derived', 'disputed', 'user']);

export const criterionSchema = z.object({
  rule_set: z.string(), clause: z.string(), provenance: provenanceSchema, measure: z.string(), window_m: number.nullable(),
  inspection: z.string(), ...span, value: number, value_uncertainty: number.nullable(), limit: number, comparator: z.enum(['>', '>=', '<', '<=']), unit: z.string(),
  utilisation: number, reached: z.boolean(), verdict: z.enum(['reached', 'may-be-reached', 'not-reached']),
  sentence: z.string(), note: z.string(),
  /** What the rule asks for when its limit is reached. */
  consequence: z.enum(['discard', 're-terminate', 'inform', 'watch']),
});

export const notEvaluatedSchema = z.object({ rule_set: z.string(), clause: z.string(), needs: z.string() });

export const lifeSchema = z.object({
  rule_set: z.string(), clause: z.string(), ...span, model: z.string(), basis: z.enum(['calendar', 'trips']), inspections_used: number,
  date_low: z.string().nullable(), date_median: z.string().nullable(), date_high: z.string().nullable(),
  trips_low: number.nullable(), trips_median: number.nullable(), trips_high: number.nullable(),
  /** Where no growth is found: the date before which (90 %) the limit is not reached. */
  not_before: z.string().nullable(),
  reason: z.string(),
  series: z.array(z.object({ inspection: z.string(), date: z.string(), trips: number.nullable(), value: number, uncertainty: number })),
  limit: number, unit: z.string(),
});

export const assessmentSchema = z.object({
  schema: z.literal(1), generated: z.string(), product: z.string(), record_sha256: z.string(), synthetic: z.boolean(),
  rope: z.object({ id: z.string(), name: z.string(), length_m: number.nullable(), loop: z.boolean(), geometry: z.array(z.object({ field: z.string(), value: z.union([number, z.string()]), unit: z.string(), source: z.string() })) }),
  /** `understood`: how the file was read, one line per decision. */
  files: z.array(z.object({ file: z.string(), sha256: z.string(), rows: number, rows_rejected: number, understood: z.array(z.string()) })),
  cautions: z.array(z.string()),
  rule_sets: z.array(z.object({ id: z.string(), title: z.string(), edition: z.string(), reason: z.string() })),
  inspections: z.array(inspectionSchema),
  not_inspected: z.array(z.object({ ...span, last_seen: z.string().nullable() })),
  growth: z.array(growthSchema),
  criteria: z.array(criterionSchema),
  criteria_not_evaluated: z.array(notEvaluatedSchema),
  life: z.array(lifeSchema),
  notes: z.array(z.object({ id: z.string(), inspection: z.string(), ...span, kind: z.string(), value: number.nullable(), unit: z.string(), severity: z.string(), photo: z.string().nullable(), remark: z.string() })),
  /** Photos that no note names: where each belongs and why; `position_m` null: not placed. */
  photos: z.array(z.object({
    file: z.string(), inspection: z.string().nullable(), position_m: number.nullable(), within_m: number.nullable(),
    by: z.enum(['hand', 'name', 'time', 'nothing']), reason: z.string(), taken: z.string().nullable(), is_image: z.boolean(),
  })).default([]),
  summary: z.object({
    state: z.enum(['continue', 'continue-shorter-interval', 'refer', 'discard-criterion-reached']),
    reasons: z.array(z.string()), next_inspection_by: z.string().nullable(), not_inspected_m: number,
    /** Which further inspection would change the answer most: where and when. */
    advice: z.string().default(''),
  }),
});

export type Assessment = z.infer<typeof assessmentSchema>;
