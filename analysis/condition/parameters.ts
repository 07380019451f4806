/** One setting of the analysis: its default and why. Every one can be changed and goes into the output. */
export interface ParameterEntry {
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
}

const TABLE = {
  faultBaselineLength: { value: 1.2, unit: 'm', reason: 'LF is taken about its mean over this length: twenty times the widest pulse, so that slow humps go and pulses keep their height' },
  faultNarrowest: { value: 0.007, unit: 'm', reason: 'narrowest pulse sought (full width at half height): a break read by a sensor about 9 mm away (width 0.768 of the distance)' },
  faultWidest: { value: 0.064, unit: 'm', reason: 'widest pulse sought: a break about 80 mm deep; wider humps are not breaks' },
  faultWidthRatio: { value: 1.6, unit: '1', reason: 'ratio of neighbouring widths in the filter bank: a pulse between two loses less than 2 % of its height' },
  faultLeastShare: { value: 1, unit: 'of the noise', reason: 'a peak lower than the root mean square of noise with strand pattern is not called: it would rest on the pattern being taken off to its last part' },
  falseCallsPer100m: { value: 0.1, unit: '1/100 m', reason: 'false calls accepted on sound rope; the threshold follows from the rope\'s own noise' },
  strandSearchShare: { value: 0.15, unit: '1', reason: 'the strand pattern is sought this far about its nominal spacing: lay length changes with wear and load' },
  strandShortest: { value: 0.03, unit: 'm', reason: 'shortest strand spacing sought where lay length or strands are unknown' },
  strandLongest: { value: 0.08, unit: 'm', reason: 'longest strand spacing sought where lay length or strands are unknown' },
  noiseBlock: { value: 1, unit: 'm', reason: 'noise is measured robustly in blocks of this length, 15 pulse widths or more' },
  noiseChangePenalty: { value: 12, unit: '1', reason: 'penalty for a change of noise level: twice the logarithm of about 400 blocks' },
  resolutionWidths: { value: 1.2, unit: 'pulse widths', reason: 'two pulses nearer than this many of their own widths at half height cannot be told apart and are one indication with a range of counts' },
  secondPulseShare: { value: 0.22, unit: '1', reason: 'a pulse within reach of a stronger one must have this share of its height: below it is the misfit of the stronger one' },
  visualMatch: { value: 0.5, unit: 'm', reason: 'a break seen is matched with indications within this distance: a hand-read position is no better' },
  lossBlock: { value: 0.25, unit: 'm', reason: 'LMA is averaged in blocks of about the averaging length before lengths of changed level are sought' },
  lossChangePenalty: { value: 4, unit: '1', reason: 'penalty for a change of LMA level, times the logarithm of the count of blocks and the long-run noise variance: correlated noise counts in full' },
  smallestZoneLoss: { value: 0.3, unit: '%', reason: 'a mean loss below this is not called: the middle of the repeatability of common instruments, 0.1 to 0.5 % (common practice)' },
  zoneSignificance: { value: 5, unit: '1', reason: 'a zone must stand out by this many standard errors, those of correlated noise at its own length' },
  baselineKnot: { value: 200, unit: 'm', reason: 'the baseline bends no faster than over this length, so that long wear is not taken for drift' },
  zoneJoin: { value: 1, unit: 'm', reason: 'lengths of loss nearer than this are one zone' },
  textureRaised: { value: 1.4, unit: '1', reason: 'LF texture above this ratio of the rope\'s own is corrosion: the geometric middle between none (1) and the least that corrosion shows (2)' },
  detectableZoneLength: { value: 5, unit: 'm', reason: 'length for which the smallest detectable loss is stated' },
  detectionProbability: { value: 0.9, unit: '1', reason: 'probability at which a smallest detectable size is stated (a90 of MIL-HDBK-1823A)' },
} as const satisfies Record<string, ParameterEntry>;

export type ParameterName = keyof typeof TABLE;
export type ConditionParameters = Readonly<Record<ParameterName, number>>;

export const CONDITION_PARAMETERS: Readonly<Record<ParameterName, ParameterEntry>> = TABLE;

/** Defaults with the user's changes over them. Names that are not in the table and values that are not numbers are ignored. */
export function resolveParameters(changes: Readonly<Partial<Record<string, number>>> | undefined): ConditionParameters {
  const resolved = Object.fromEntries(Object.entries(TABLE).map(([name, entry]) => [name, entry.value])) as Record<ParameterName, number>;
  for (const name of Object.keys(resolved) as ParameterName[]) {
    const changed = changes?.[name];
    if (changed !== undefined && Number.isFinite(changed)) resolved[name] = changed;
  }
  return resolved;
}
