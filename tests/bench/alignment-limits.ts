import { execFileSync } from 'node:child_process';
import { drawWarpedRope } from '../support/lab-warp.ts';
import { alignPair, PAIRS, readPair, rootMeanSquare } from '../support/recorded-pairs.ts';
import { delayTrial } from '../support/window-delay.ts';
import { alignLab } from './alignment.ts';

/** Shift error of one window over its Cramer-Rao bound, by signal-to-noise and length, on a recorded signal; asked: at most 2. */
export function printEfficiency(): void {
  const template = readPair('ecg_snr20').first;
  const smooth = template.map((_, i) => [1, 4, 6, 4, 1].reduce((sum, weight, k) => sum + (weight / 16) * template[Math.max(0, Math.min(template.length - 1, i + k - 2))], 0));
  console.log('\nshift error of one window over its Cramer-Rao bound (asked: at most 2)');
  for (const length of [128, 256, 512]) {
    const row = [40, 30, 20, 10].map((decibel) => {
      const { rmse, bound, silent, draws } = delayTrial(smooth, 1500, length, decibel, 300, length + decibel);
      return `${decibel} dB ${(rmse / bound).toFixed(2)}${silent > 0 ? ` (${silent} of ${draws} windows say nothing)` : ''}`;
    });
    console.log(`  ${length} samples: ${row.join('   ')}`);
  }
}

export async function printPairs(): Promise<void> {
  console.log('\nrecorded signals warped by known lines, root mean square error in samples (asked: 0.42, 0.66, 0.90)');
  for (const name of PAIRS) {
    const pair = readPair(name);
    console.log(`  ${name.padEnd(22)} ${rootMeanSquare(await alignPair(pair), pair.truth).toFixed(3)}`);
  }
}

const CORRELATE = `
import json, sys, time
import numpy, scipy
from scipy.signal import correlate
r = numpy.random.default_rng(1)
a, b = r.normal(size=int(sys.argv[1])), r.normal(size=int(sys.argv[2]))
best = [1e9, 1e9]
for _ in range(5):
    wall, cpu = time.perf_counter(), time.process_time()
    correlate(a, b, 'full', 'fft')
    best = [min(best[0], time.perf_counter() - wall), min(best[1], time.process_time() - cpu)]
print(json.dumps({'version': scipy.__version__, 'wall': best[0], 'cpu': best[1]}))
`;

/** Two scans of a million samples against one FFT correlation of as many by scipy in the same run; asked: at most 3 times. */
export async function printSpeed(python: string): Promise<void> {
  const rope = drawWarpedRope(7, { length: 5000, steps: [0.005], slips: 10 });
  const lengths = rope.scans.map((scan) => scan.trace.length);
  const reference = JSON.parse(execFileSync(python, ['-c', CORRELATE, ...lengths.map(String)], { encoding: 'utf8' })) as { version: string; wall: number; cpu: number };
  let best = { wall: Infinity, cpu: Infinity };
  for (let round = 0; round < 5; round += 1) {
    const [wall, cpu] = [performance.now(), process.cpuUsage()];
    await alignLab(rope);
    const used = process.cpuUsage(cpu);
    best = { wall: Math.min(best.wall, (performance.now() - wall) / 1e3), cpu: Math.min(best.cpu, (used.user + used.system) / 1e6) };
  }
  console.log(`\n${lengths.join(' and ')} samples aligned: wall ${best.wall.toFixed(2)} s, processor ${best.cpu.toFixed(2)} s; scipy ${reference.version} correlation: wall ${reference.wall.toFixed(2)} s, processor ${reference.cpu.toFixed(2)} s; ratio by wall ${(best.wall / reference.wall).toFixed(1)}, by processor ${(best.cpu / reference.cpu).toFixed(1)} (asked: 3)`);
}
