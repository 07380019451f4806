import { alignInspections } from '../../analysis/alignment/align-inspections.ts';
import { toRope, uncertaintyAt } from '../../analysis/alignment/rope-map.ts';
import type { RopeMap } from '../../analysis/alignment/rope-map.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';
import { drawWarpedRope, truthWalker } from '../support/lab-warp.ts';
import { printEfficiency, printPairs, printSpeed } from './alignment-limits.ts';
import type { WarpedRope, WarpedScan, WarpOptions } from '../support/lab-warp.ts';

/** Errors of one scan's map at every half metre of its file. Metres. */
export interface MapErrors {
  readonly all: number[];
  readonly nearSlip: number[];
  readonly bounds: number[];
  readonly directionRight: boolean;
}

export async function alignLab(rope: WarpedRope): Promise<RopeMap[]> {
  return alignInspections(rope.scans.map((scan, k) => ({ id: `scan ${k}`, date: rope.dates[k], trace: scan.trace, statedDirection: null, positionsFell: false, tiePoints: [] })), {
    ropeLength: rope.ropeLength, loopLength: rope.loopLength, landmarks: [], events: [...rope.events], checkpoint: noCheckpoint,
  });
}

export function errorsOf(map: RopeMap, scan: WarpedScan, loopLength: number | null): MapErrors {
  const walk = truthWalker(scan.truth);
  const [all, nearSlip, bounds] = [[], [], []] as number[][];
  const end = scan.trace.start + (scan.trace.length - 1) * scan.trace.step;
  for (let m: number = scan.trace.start; m <= end; m += 0.5) {
    let error = toRope(map, measuredPosition(m)) - walk(m);
    if (loopLength !== null) error -= Math.round(error / loopLength) * loopLength;
    (scan.slips.some((slip) => Math.abs(slip - m) < 5) ? nearSlip : all).push(Math.abs(error));
    bounds.push(uncertaintyAt(map, measuredPosition(m)) / Math.max(1e-9, Math.abs(error)));
  }
  return { all: [...all, ...nearSlip], nearSlip, bounds, directionRight: map.reversed === scan.reversed };
}

export function quantileOf(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length === 0 ? Number.NaN : sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

export const KINDS: Record<string, Partial<WarpOptions>> = {
  ordinary: {},
  'texture 0.1 m': { textureLength: 0.1 },
  'texture 1 m': { textureLength: 1 },
  'texture 2 m': { textureLength: 2 },
  'rough texture': { textureShape: 'rough', textureLength: 0.5 },
  'averaged texture': { textureShape: 'averaged', textureLength: 0.3 },
  'coloured noise': { noiseLength: 0.1 },
  'no faults': { faultEvery: null },
  'coil reversed': { coil: true, reverse: 'always' },
  'many slips': { slips: 10 },
  'sampled at 20 mm': { steps: [0.02] },
  'steady scale': { scaleWander: 0, slips: 2 },
  loop: { loop: true },
  'cut unrecorded': { cut: 'unrecorded' },
  'cut recorded': { cut: 'recorded' },
  'four scans': { scans: 4 },
  'long rope': { length: 3000, slips: 8, steps: [0.01] },
  'short rope': { length: 120, slips: 1 },
  'weak texture': { textureRatio: 0.3, faultEvery: 60 },
  'very weak texture': { textureRatio: 0.1, faultEvery: null },
  featureless: { textureRatio: 0, faultEvery: null, growth: false },
  'featureless, grown': { textureRatio: 0, faultEvery: null },
};

/** `run([seeds, kind...])` prints one line a kind; without kinds also the limits, the recorded pairs and the speed. `--python PATH` names the interpreter for scipy. */
export async function run(args: string[]): Promise<void> {
  const at = args.indexOf('--python');
  const python = at >= 0 ? args.splice(at, 2)[1] : '/usr/bin/python3';
  if (args.length < 2) {
    printEfficiency();
    await printPairs();
    await printSpeed(python);
  }
  const seeds = Number(args[0] ?? 6);
  const kinds = args.length > 1 ? args.slice(1) : Object.keys(KINDS);
  console.log('kind                 | median  p95     slip p95  worst rope p95 | covered worst-rope | bound/|error| p95s | direction | ms');
  for (const kind of kinds) {
    const pooled = { all: [] as number[], near: [] as number[], worst: 0, covered: [] as number[], ratios: [] as number[], right: 0, scans: 0, time: 0 };
    for (let seed = 1; seed <= seeds; seed += 1) {
      const rope = drawWarpedRope(seed, KINDS[kind]);
      const from = performance.now();
      const maps = await alignLab(rope);
      pooled.time += performance.now() - from;
      rope.scans.forEach((scan, k) => {
        if (k === 0) return;
        const errors = errorsOf(maps[k], scan, rope.loopLength);
        pooled.all.push(...errors.all);
        pooled.near.push(...errors.nearSlip);
        const p95 = quantileOf(errors.all, 0.95);
        pooled.worst = Math.max(pooled.worst, p95);
        const covered = errors.bounds.filter((ratio) => ratio >= 1).length / errors.bounds.length;
        pooled.covered.push(covered);
        pooled.ratios.push(quantileOf(maps[k].uncertainty.map((u) => u.value), 0.5) / quantileOf(errors.all, 0.5), quantileOf(maps[k].uncertainty.map((u) => u.value), 0.5) / p95);
        pooled.right += errors.directionRight ? 1 : 0;
        pooled.scans += 1;
        if (process.env.DETAIL) console.log(`   seed ${seed} scan ${k}: median ${quantileOf(errors.all, 0.5).toFixed(4)} p95 ${p95.toFixed(3)} slip ${quantileOf(errors.nearSlip, 0.95).toFixed(3)} covered ${covered.toFixed(3)} bound ${quantileOf(maps[k].uncertainty.map((u) => u.value), 0.5).toFixed(3)} rev ${scan.reversed}/${maps[k].reversed} slips ${scan.slips.length}/${maps[k].slips.length} conf ${maps[k].confidence.toFixed(2)} knots ${maps[k].knots.length}`);
      });
    }
    const show = (x: number): string => x.toFixed(4).padStart(7);
    const ratios = pooled.ratios.filter((_, i) => i % 2 === 1);
    console.log(`${kind.padEnd(20)} | ${show(quantileOf(pooled.all, 0.5))} ${show(quantileOf(pooled.all, 0.95))} ${show(quantileOf(pooled.near, 0.95))}  ${show(pooled.worst)} | ${show(pooled.covered.reduce((a, b) => a + b, 0) / pooled.covered.length)} ${show(Math.min(...pooled.covered))} | ${show(quantileOf(ratios, 0.5))} ${show(Math.max(...ratios))} | ${pooled.right}/${pooled.scans} | ${(pooled.time / seeds).toFixed(0)}`);
  }
}
