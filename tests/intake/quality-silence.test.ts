import { describe, expect, it } from 'vitest';
import { chance, normal } from '../corpus/scan-text.ts';
import { runOf } from '../support/run-of.ts';

interface Sample { t: number; x: number; lma: number; lf: number; v: number }

/** A clean run of 100 m at 1 m/s, 5 mm apart unless said otherwise. */
function live(seed: number, length = 100, step = 0.005): Sample[] {
  const random = chance(seed);
  let slow = 0;
  return Array.from({ length: Math.round(length / step) + 1 }, (_, i) => {
    slow += 0.1 * (0.3 * normal(random) - slow);
    return { t: i * step, x: i * step, lma: slow, lf: 10 * normal(random), v: 1 + 0.01 * normal(random) };
  });
}
type Alter = (samples: Sample[]) => Sample[];
const each = (alter: (s: Sample, i: number) => Partial<Sample>): Alter => (samples) => samples.map((s, i) => ({ ...s, ...alter(s, i) }));
const stretch = (from: number, to: number, alter: (s: Sample, i: number) => Partial<Sample>): Alter => each((s, i) => (s.x >= from && s.x < to ? alter(s, i) : {}));

async function codesOf(alter: Alter, more: { ropeLength?: number; step?: number } = {}): Promise<string[]> {
  const rows = alter(live(31, 100, more.step)).map((s) => `${s.t.toFixed(4)},${s.x.toFixed(4)},${Number.isFinite(s.lma) ? s.lma.toFixed(4) : ''},${Number.isFinite(s.lf) ? s.lf.toFixed(3) : ''},${s.v.toFixed(4)}`);
  const run = await runOf(`Time [s],Position [m],LMA loss [%],LF [mV],Speed [m/s]\n${rows.join('\n')}\n`, { ropeLength: more.ropeLength ?? null });
  return [...new Set(run.quality.map((found) => found.code))];
}

/** The rope stands at 40 m for so long, while the clock runs and the signal is live. */
const stop = (seconds: number): Alter => (samples) => {
  const random = chance(5);
  const at = samples.findIndex((s) => s.x >= 40);
  const held = Array.from({ length: Math.round(seconds / 0.005) }, (_, i) => ({ ...samples[at], t: samples[at].t + 0.005 * (i + 1), lf: 10 * normal(random), v: 0 }));
  return [...samples.slice(0, at + 1), ...held, ...samples.slice(at + 1).map((s) => ({ ...s, t: s.t + seconds }))];
};
/** The rope runs back so far at 50 m and on again. */
const back = (metres: number): Alter => (samples) => {
  const n = Math.round(metres / 0.005);
  const at = samples.findIndex((s) => s.x >= 50);
  const away = samples.slice(at - n, at);
  return [...samples.slice(0, at), ...[...away].reverse(), ...away, ...samples.slice(at)].map((s, i) => ({ ...s, t: i * 0.005 }));
};
const pulse = (height: number, limit: number): Alter => each((s) => ({ lf: Math.min(limit, s.lf + height * Math.exp(-(((s.x - 60) / 0.02) ** 2))) }));
/** Speed swings between 0.6 and 1.4 m/s once in so many metres; the clock keeps up. */
const swing = (metres: number): Alter => (samples) => {
  let t = 0;
  return samples.map((s) => {
    const v = 1 + 0.4 * Math.sin((2 * Math.PI * s.x) / metres);
    t += 0.005 / v;
    return { ...s, t, v };
  });
};

/** Code, what provokes it, and what comes near and must not. */
const PAIRS: [string, Alter, Alter, { ropeLength?: number; step?: number }?, { ropeLength?: number; step?: number }?][] = [
  ['stops', stop(4), stop(0.05)],
  ['backward', back(2), each(() => ({}))],
  ['duplicate-positions', each((_, i) => (i % 400 === 7 ? { x: (i - 1) * 0.005 } : {})), each(() => ({}))],
  ['encoder-jump', each((s) => (s.x > 50 ? { x: s.x + 3 } : {})), each((s) => (s.x > 50 ? { x: s.x + 0.02 } : {}))],
  ['gap', (samples) => samples.filter((s) => s.x < 20 || s.x > 20.3), (samples) => samples.filter((s) => s.x < 20 || s.x > 20.012)],
  ['slip-suspect', each((s) => ({ x: s.x - (s.x > 20 ? Math.min(0.08, (s.x - 20) / 4) : 0) })), each((s) => ({ x: s.x * 1.004 }))],
  ['coarse-sampling', each(() => ({})), each(() => ({})), { step: 0.02 }, { step: 0.008 }],
  ['speed-range', stretch(30, 35, (s) => ({ v: s.v + 3 })), stretch(30, 35, (s) => ({ v: s.v + 0.02 }))],
  ['speed-change', swing(2), swing(50)],
  ['saturation', pulse(600, 200), pulse(600, 1e9)],
  ['dropout', stretch(30, 33, () => ({ lma: NaN, lf: NaN })), stretch(30, 30.02, () => ({ lma: NaN, lf: NaN }))],
  ['dead-channel', each(() => ({ lf: 7 })), each((s) => ({ lf: s.lf / 1000 + 7 }))],
  ['spikes', each((s, i) => (i % 5000 === 2500 ? { lma: s.lma + 8 } : {})), stretch(40, 45, (s) => ({ lma: s.lma + 2 }))],
  ['drift', each((s) => ({ lma: s.lma + 0.015 * s.x })), each((s) => ({ lma: s.lma + 0.003 * s.x }))],
  ['noise', each((s, i) => ({ lma: s.lma + (i % 2 === 0 ? 1 : -1) * (0.8 + 0.1 * Math.sin(i)) })), each((s, i) => ({ lma: s.lma + (i % 2 === 0 ? 1 : -1) * (0.15 + 0.05 * Math.sin(i)) }))],
  ['end-ramp', each((s) => ({ lma: s.lma - 12 * Math.exp(-s.x / 0.5) })), each((s) => ({ lma: s.lma - 0.8 * Math.exp(-s.x / 0.5) }))],
  ['length-disagrees', each(() => ({})), each(() => ({})), { ropeLength: 120 }, { ropeLength: 101 }],
];

describe('a quality finding', () => {
  it.each(PAIRS)('%s: is made where it should be, and not where something only comes near', async (code, provokes, near, withMore, nearMore) => {
    expect(await codesOf(provokes, withMore)).toContain(code);
    expect(await codesOf(near, nearMore)).not.toContain(code);
  });
});
