import { z } from 'zod';

/** record.json: what is known of one rope. Units are in the field names; positions are metres of rope position. */
const isoDate = z.string().regex(/^\d{4}-\d{2}-\d{2}([T ][\d:.]+(Z|[+-]\d{2}:?\d{2})?)?$/, 'must be an ISO 8601 date such as 2026-03-31')
  .refine((text) => Number.isFinite(Date.parse(text)), 'is not a date of the calendar');
const length = z.number().finite();
const positive = z.number().finite().positive();

const ropeSchema = z.looseObject({
  id: z.string().min(1),
  name: z.string().optional(),
  application: z.string().optional(),
  construction: z.string().optional(),
  core: z.enum(['fibre', 'steel', 'locked-coil']).optional(),
  lay: z.enum(['ordinary', 'lang']).optional(),
  diameter_mm: positive.optional(),
  lay_length_mm: positive.optional(),
  strands: z.number().int().positive().optional(),
  wires: z.number().int().positive().optional(),
  outer_wires: z.number().int().positive().optional(),
  metallic_area_mm2: positive.optional(),
  grade_mpa: positive.optional(),
  minimum_breaking_force_kn: positive.optional(),
  length_m: positive.optional(),
  installed: isoDate.optional(),
  loop: z.boolean().optional(),
});

const columnSchema = (units: readonly [string, ...string[]]) =>
  z.looseObject({ name: z.union([z.string(), z.number().int()]).optional(), unit: z.enum(units).optional() });

export const columnsSchema = z.looseObject({
  position: columnSchema(['m', 'ft', 'mm', 'counts']).extend({ pulses_per_metre: positive.optional() }).optional(),
  lma: columnSchema(['%', 'mm2']).extend({ loss_is: z.enum(['positive', 'negative']).optional() }).optional(),
  lf: z.looseObject({ name: z.union([z.string(), z.number().int()]).optional(), unit: z.string().optional() }).optional(),
  speed: z.looseObject({ name: z.union([z.string(), z.number().int()]).optional(), unit: z.string().optional() }).optional(),
  time: z.union([z.string(), z.looseObject({ name: z.string().optional(), unit: z.string().optional() })]).optional(),
});

const runSchema = z.looseObject({
  file: z.string().min(1),
  columns: columnsSchema.optional(),
  direction: z.enum(['forward', 'reverse']).optional(),
});

const inspectionSchema = z.looseObject({
  id: z.string().min(1),
  date: isoDate,
  trips: z.number().finite().nonnegative().optional(),
  runs: z.array(runSchema).default([]),
  notes: z.string().optional(),
  photos: z.string().optional(),
});

const landmarkSchema = z.looseObject({
  name: z.string().min(1),
  kind: z.string().optional(),
  position_m: length.optional(),
  from_m: length.optional(),
  to_m: length.optional(),
  /** Length to either side that the head cannot judge; left out: the default for its kind. */
  blind_m: z.number().finite().nonnegative().optional(),
}).refine((mark) => mark.position_m !== undefined || (mark.from_m !== undefined && mark.to_m !== undefined), 'needs position_m, or from_m and to_m');

const eventSchema = z.looseObject({
  date: isoDate,
  kind: z.enum(['shortened', 'relocated', 'resocketed', 'turned', 'spliced', 'lubricated', 'parted']),
  end: z.enum(['A', 'B']).optional(),
  position_m: length.optional(),
  length_m: length.optional(),
  note: z.string().optional(),
});

export const recordSchema = z.looseObject({
  schema: z.literal(1),
  rope: ropeSchema,
  rules: z.array(z.string()).optional(),
  landmarks: z.array(landmarkSchema).default([]),
  events: z.array(eventSchema).default([]),
  inspections: z.array(inspectionSchema).default([]),
});

export type RopeRecord = z.infer<typeof recordSchema>;
export type RopeData = RopeRecord['rope'];
export type Landmark = RopeRecord['landmarks'][number];
export type RopeEvent = RopeRecord['events'][number];
export type InspectionRecord = RopeRecord['inspections'][number];
export type RunRecord = InspectionRecord['runs'][number];
export type RunColumns = z.infer<typeof columnsSchema>;
