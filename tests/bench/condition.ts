import { execFileSync } from 'node:child_process';
import { assessCondition } from '../../analysis/condition/assess-condition.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { laboratoryContext } from '../support/lab-score.ts';
import { longConditions } from '../support/lab-conditions.ts';
import { makeLabTrace } from '../support/lab-trace.ts';

const SAMPLES = 1_000_000;
const ASKED = 4;

/** What the time is held against: peaks with prominence, and one convolution of as many points by FFT. */
const REFERENCE = `
import json, sys, time
import numpy, scipy
from scipy.signal import find_peaks, fftconvolve
n = int(sys.argv[1])
random = numpy.random.default_rng(1)
x = random.normal(size=n)
k = random.normal(size=n)
best = [1e9, 1e9]
for _ in range(5):
    wall, cpu = time.perf_counter(), time.process_time()
    find_peaks(x, prominence=1)
    fftconvolve(x, k, 'same')
    best = [min(best[0], time.perf_counter() - wall), min(best[1], time.process_time() - cpu)]
print(json.dumps({'version': scipy.__version__, 'wall': best[0], 'cpu': best[1]}))
`;

/** Times a million samples through faults and zones, against scipy in the same run (\`--python\` names the interpreter). Processor time decides: others may use the machine. */
export async function run(args: string[]): Promise<void> {
  const at = args.indexOf('--python');
  const python = at >= 0 ? args[at + 1] : '/usr/bin/python3';
  const reference = JSON.parse(execFileSync(python, ['-c', REFERENCE, String(SAMPLES)], { encoding: 'utf8' })) as { version: string; wall: number; cpu: number };
  console.log(`scipy ${reference.version}: wall ${reference.wall.toFixed(2)} s, processor ${reference.cpu.toFixed(2)} s`);
  let worst = 0;
  for (const step of [0.001, 0.002, 0.005]) {
    const conditions = longConditions(step, SAMPLES);
    const trace = makeLabTrace(conditions);
    let best = { wall: Infinity, cpu: Infinity, faults: 0, zones: 0 };
    for (let round = 0; round < 3; round += 1) {
      const wall = performance.now();
      const cpu = process.cpuUsage();
      const found = await assessCondition(trace, { ...laboratoryContext(conditions), checkpoint: noCheckpoint });
      const used = process.cpuUsage(cpu);
      const seconds = (used.user + used.system) / 1e6;
      if (seconds < best.cpu) best = { wall: (performance.now() - wall) / 1e3, cpu: seconds, faults: found.faults.length, zones: found.zones.length };
    }
    worst = Math.max(worst, best.cpu / reference.cpu);
    console.log(`step ${step} m: wall ${best.wall.toFixed(2)} s, processor ${best.cpu.toFixed(2)} s, ${(best.cpu / reference.cpu).toFixed(1)} times scipy (asked ${ASKED}); ${best.faults} faults of ${conditions.faults.length}, ${best.zones} zones of ${conditions.zones.length}`);
  }
  if (worst > ASKED) process.exitCode = 1;
}
