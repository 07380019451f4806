import { z } from 'zod';

/**
 * A rule set is data: what is measured, over which length, against which limit, and where that limit was read.
 * The program ships sets and a user may copy and change one; the evaluator knows nothing of any single rule.
 */
export const provenanceOfRule = z.enum(['published', 'memory', 'common-practice', 'derived', 'disputed', 'user']);

export const measures = [
  'area-reduction', 'strength-loss', 'broken-wire-area',
  'broken-wires', 'broken-wires-in-strand', 'broken-wires-side-by-side', 'broken-wires-in-valley', 'broken-wires-at-termination', 'adjacent-broken-outer-wires',
  'diameter-reduction', 'diameter-increase', 'diameter-severity', 'outer-wire-wear', 'lay-length-change', 'waviness',
  'corrosion-severity', 'combined-severity', 'distortion', 'heat-damage', 'end-attachment',
] as const;
export type Measure = (typeof measures)[number];

const windowSchema = z.strictObject({ length: z.number().positive(), unit: z.enum(['d', 'lay', 'm']) });

const limitSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('number'), value: z.number().nonnegative() }),
  /** So many percent of the wires of the rope, of one strand, or of the outer wires; the limit is then a count. */
  z.strictObject({ kind: z.literal('share-of-wires'), percent: z.number().positive(), of: z.enum(['rope', 'strand', 'outer-wires']) }),
  /** A cell of the table of visible broken wires, found by category, lay, drum and class of mechanism. */
  z.strictObject({
    kind: z.literal('broken-wire-table'), window: z.enum(['6d', '30d']), drum: z.enum(['single-layer', 'multi-layer']),
    mechanism: z.enum(['M1-M4', 'M5-M8']), reading: z.enum(['printed', 'two-rows-up', 'second-reprint']),
  }),
  /** A limit by kind of core; null where the rule gives none for it. */
  z.strictObject({ kind: z.literal('by-core'), fibre: z.number().nullable(), steel: z.number().nullable(), rotationResistant: z.number().nullable(), lockedCoil: z.number().nullable() }),
]);

const tableChoice = z.strictObject({ drum: z.enum(['single-layer', 'multi-layer']), mechanism: z.enum(['M1-M4', 'M5-M8']), reading: z.enum(['printed', 'two-rows-up', 'second-reprint']) });

const ropesSchema = z.strictObject({
  cores: z.array(z.enum(['fibre', 'steel', 'locked-coil'])).optional(),
  lay: z.enum(['ordinary', 'lang']).optional(),
  rotationResistant: z.boolean().optional(),
  strands: z.number().int().positive().optional(),
});

export const clauseSchema = z.strictObject({
  id: z.string().min(1),
  measure: z.enum(measures),
  /** Length over which the measure is taken; null: at a point or over the whole rope. */
  window: windowSchema.nullable(),
  limit: limitSchema,
  comparator: z.enum(['>', '>=', '<', '<=']),
  unit: z.string(),
  provenance: provenanceOfRule,
  /** What has to be known before this clause can be judged, in words. */
  needs: z.string().min(1),
  sentence: z.string().min(1),
  source: z.string().min(1),
  /** What follows when it is reached; left out: discard. */
  consequence: z.enum(['discard', 're-terminate', 'inform', 'watch']).optional(),
  /** Which diameter a reduction is counted from. */
  reference: z.enum(['nominal', 'baseline', 'running-in']).optional(),
  /** Ropes to which the clause applies; left out: all ropes of the set. */
  ropes: ropesSchema.optional(),
  /** Combined severity: the column of the table of broken wires that breaks are rated against. */
  ratedAgainst: tableChoice.optional(),
  /** The limit shrinks with the wear of the outer wires, by the table in wear-factor.ts. */
  wearLowersLimit: z.boolean().optional(),
  /** Loose wires count as broken. */
  looseWiresCount: z.boolean().optional(),
});

const intervalSchema = z.strictObject({
  id: z.string().min(1),
  months: z.number().positive(),
  /** When this interval holds; every condition given must be met. Ages count from the date of installation. */
  when: z.strictObject({
    lossAbovePercent: z.number().optional(),
    lossUpToPercent: z.number().optional(),
    ageFromYears: z.number().optional(),
    ageBelowYears: z.number().optional(),
    firstInspection: z.boolean().optional(),
  }),
  provenance: provenanceOfRule,
  sentence: z.string().min(1),
  source: z.string().min(1),
});

export const duties = [
  'funicular', 'ropeway-haul', 'ropeway-track', 'ropeway-tension', 'surface-lift', 'forest-ropeway', 'mine-hoist', 'mine-guide', 'coal-mine-hoist', 'crane', 'crane-standing', 'lift', 'scaffold-hoist', 'sling', 'unknown',
] as const;
export type Duty = (typeof duties)[number];

export const ruleSetSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9][a-z0-9-]*$/, 'use lower-case letters, digits and hyphens'),
  title: z.string().min(1),
  edition: z.string().min(1),
  scope: z.strictObject({
    text: z.string().min(1),
    duties: z.array(z.enum(duties)),
    /** Duties for which the program proposes this set when the record names none. */
    proposedFor: z.array(z.enum(duties)).default([]),
    ropes: ropesSchema.default({}),
  }),
  clauses: z.array(clauseSchema),
  intervals: z.array(intervalSchema).default([]),
  /** Two sources differ, or a value is doubtful: said beside the set wherever it is shown. */
  caution: z.string().optional(),
  /** Set where a user changed a copy: the set it came from and what was changed. */
  changed: z.strictObject({ from: z.string(), clauses: z.array(z.string()), note: z.string() }).optional(),
  /** True for a name in the record that no set answers to. */
  unknown: z.boolean().optional(),
}).superRefine((set, context) => {
  for (const list of [set.clauses, set.intervals]) {
    const ids = list.map((each) => each.id);
    const twice = ids.find((id, index) => ids.indexOf(id) !== index);
    if (twice !== undefined) context.addIssue({ code: 'custom', message: `clause ${twice} is there twice` });
  }
});

export type RuleSet = z.infer<typeof ruleSetSchema>;
export type RuleSetData = z.input<typeof ruleSetSchema>;
export type Clause = z.infer<typeof clauseSchema>;
export type IntervalRule = z.infer<typeof intervalSchema>;
export type Limit = Clause['limit'];
export type ClauseWindow = NonNullable<Clause['window']>;

/** The clause of a set, or null where there is none of that name. */
export function findClause(sets: readonly RuleSet[], ruleSetId: string, clauseId: string): Clause | null {
  return sets.find((set) => set.id === ruleSetId)?.clauses.find((clause) => clause.id === clauseId) ?? null;
}
