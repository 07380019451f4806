/** One limit of the intake: value, unit, why, and where the value comes from. */
export interface Threshold {
  readonly value: number;
  readonly unit: string;
  readonly reason: string;
  readonly provenance: 'published' | 'memory' | 'common-practice' | 'derived';
}

const limit = (value: number, unit: string, provenance: Threshold['provenance'], reason: string): Threshold => ({ value, unit, provenance, reason });

/** Every limit that cleaning and quality use, in one place. Shown to the user and written into the documentation from here. */
export const THRESHOLDS = {
  gapLength: limit(0.03, 'm', 'common-practice', 'two breaks are shown apart from 30-50 mm on; a longer hole could hide one, so it stays a hole'),
  gapSteps: limit(3.5, 'sample steps', 'derived', 'local steps vary by a factor of two or three where speed changes; more is missing data'),
  coarseStep: limit(0.01, 'm', 'derived', 'a break pulse is 0.77 times the distance of the sensor wide, some 10-20 mm; fewer than two samples on it can miss its peak'),
  averagingLength: limit(0.3, 'm', 'common-practice', 'usual averaging length of an LMA channel, 100-500 mm'),
  frozenLength: limit(0.5, 'm', 'derived', 'longer than the averaging length: over it a live LMA channel shows its noise'),
  frozenSamples: limit(25, 'samples', 'derived', 'fewer equal values in a row come about by rounding'),
  frozenOdds: limit(1e-6, 'per run', 'derived', 'equal values in a row count as frozen only where rounding of live noise would make one so long less than once in a million runs'),
  frozenHabit: limit(12, 'times', 'derived', 'a coarsely written quiet channel stands still often; only a far longer standstill than its habit says that it is dead'),
  markDistance: limit(10, 'm or as written', 'derived', 'a mark such as -9999 among positions lies far off those around it; a scan that passes there does not'),
  slipShare: limit(0.03, 'share', 'derived', 'encoder scale errs by 0.1-0.5 % over the whole run; three percent over a metre is more than scale'),
  slipSigma: limit(6, 'robust sigma', 'derived', 'the way by speed and time scatters with the rounding of both'),
  noiseAgainstRuns: limit(2.5, 'times', 'derived', 'noise of one head on one rope repeats within a factor of two between visits; more is guidance, dirt or gain'),
  lossRange: limit(100, '%', 'derived', 'a rope cannot lose more than all its metal; readings beyond come from the instrument'),
  saturationSamples: limit(3, 'samples', 'derived', 'one or two samples at the extreme are a peak; three equal ones are a limit of the instrument'),
  spikeSigma: limit(12, 'robust sigma', 'derived', 'LMA is averaged over the length of the head and cannot jump in one sample'),
  spikeLoss: limit(0.5, '%', 'derived', 'smaller single-sample jumps do no harm'),
  jumpLength: limit(0.5, 'm', 'common-practice', 'slip steps of 5-200 mm are left to alignment; more in one sample is a fault of the encoder or a hole'),
  jumpSteps: limit(50, 'sample steps', 'derived', 'no drive changes its speed fifty-fold between two samples'),
  stopTime: limit(2, 's', 'common-practice', 'a rope that stands for longer has been stopped'),
  stopSamples: limit(20, 'samples', 'derived', 'without a time column: so many samples at one place are a stop'),
  slowSpeed: limit(0.05, 'm/s', 'common-practice', 'coils lose their signal; test speed is 0.3-2 m/s'),
  fastSpeed: limit(3, 'm/s', 'common-practice', 'eddy currents lag above 2-3 m/s'),
  speedChange: limit(0.5, 'm/s2', 'common-practice', 'a quick change of speed shifts coil signals and lets the friction wheel slip'),
  driftLoss: limit(0.5, '%', 'common-practice', 'repeatability of LMA is 0.1-0.5 %; more between the two ends is drift or wear of the whole length'),
  noiseLoss: limit(0.5, '%', 'common-practice', 'strand pattern makes 0.05-0.3 % root mean square; more hides a loss of one percent'),
  endRampLength: limit(2, 'm', 'common-practice', 'fringe field of a socket reaches 0.5-2 m'),
  endRampLoss: limit(1.5, '%', 'derived', 'three times the repeatability of LMA'),
  lengthDisagrees: limit(0.02, 'share', 'derived', 'encoder scale errs by 0.1-0.5 %, bedding stretch by 0.75 %; two percent is neither'),
  rowsRejected: limit(0.1, 'share', 'common-practice', 'where one row in ten cannot be read, the file is not what it seems to be'),
  emptySpan: limit(20, 'times the measured length', 'derived', 'positions that span far more than they measure are damaged'),
  fewestRows: limit(20, 'rows', 'common-practice', 'fewer rows are no scan'),
  validShare: limit(0.2, 'share', 'common-practice', 'a run that shows less than a fifth of its own length is not used for a judgement'),
  backwardShare: limit(0.5, 'share', 'common-practice', 'a run that goes back over half of its length is rocking, not scanning'),
  signEvidence: limit(3, 'ratio', 'derived', 'one tail of the LMA distribution must outweigh the other this many times to say which way loss points'),
} as const satisfies Record<string, Threshold>;
