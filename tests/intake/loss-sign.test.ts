import { describe, expect, it } from 'vitest';
import { agreeOnSign } from '../../analysis/intake/agree-on-sign.ts';
import { chance, normal } from '../corpus/scan-text.ts';
import { runOf } from '../support/run-of.ts';

interface Shape { readonly sign: number; readonly zones: readonly (readonly [number, number, number])[]; readonly header?: string; readonly ends?: number; readonly offset?: number }

/** 200 m at 5 mm: smooth LMA noise, lengths of loss (from, to, percent), ramps at the ends. */
function scan(seed: number, { sign, zones, header = 'LMA [%]', ends = 0, offset = 0 }: Shape): string {
  const random = chance(seed);
  let slow = 0;
  const lines = [`Position [m],${header},LF [mV]`];
  for (let i = 0; i <= 40_000; i += 1) {
    const x = i * 0.005;
    slow += 0.05 * (0.6 * normal(random) - slow);
    const loss = zones.reduce((sum, [from, to, percent]) => (x >= from && x < to ? sum + percent : sum), slow + offset) - ends * Math.exp(-Math.min(x, 200 - x) / 0.4);
    lines.push(`${x.toFixed(3)},${(sign * loss + 0.02 * normal(random)).toFixed(3)},${(10 * normal(random)).toFixed(2)}`);
  }
  return lines.join('\n');
}
const lossAt = (run: { trace: { loss: { values: Float64Array } | null } }, x: number) => run.trace.loss!.values[Math.round(x / 0.005)];

describe('which way loss points', () => {
  const cases: (readonly [string, Shape])[] = [1, -1].flatMap((sign) => [
    ['a long shallow wear length', { sign, zones: [[60, 140, 1.2]] }],
    ['wear over most of the rope', { sign, zones: [[20, 170, 1.5]] }],
    ['a short corrosion length', { sign, zones: [[60, 65, 2.5]] }],
    ['sockets that look like a gain', { sign, zones: [[60, 70, 2]], ends: 15 }],
    ['a splice with tucks that look like a gain', { sign, zones: [[60, 70, 2], ...Array.from({ length: 8 }, (_, k) => [100 + 3 * k, 100.8 + 3 * k, -6] as const)] }],
    ['a zero that is off', { sign, zones: [[60, 70, 2]], offset: -0.8 }],
  ] as (readonly [string, Shape])[]);
  it.each(cases)('with %s (%o)', async (_, shape) => {
    const run = await runOf(scan(5, shape));
    expect(lossAt(run, 64)).toBeGreaterThan(lossAt(run, 40));
    expect(run.quality.map((each) => each.code)).not.toContain('sign-assumed');
  });

  it('says so where nothing tells', async () => {
    const run = await runOf(scan(6, { sign: 1, zones: [] }));
    expect(run.quality.map((each) => each.code)).toContain('sign-assumed');
    expect(run.understanding.columns.find((each) => each.role === 'lma')!.certainty).toBeLessThan(0.5);
  });

  it('obeys the record', async () => {
    const columns = { lma: { loss_is: 'negative' } } as const;
    expect(lossAt(await runOf(scan(7, { sign: 1, zones: [[60, 70, 2]] }), { columns }), 64)).toBeLessThan(-1);
  });

  it('turns a run without evidence by the others of its instrument, and leaves another instrument alone', async () => {
    const early = await runOf(scan(8, { sign: -1, zones: [[60, 70, 0.2]] }));
    const late = await runOf(scan(9, { sign: -1, zones: [[60, 70, 3]] }));
    const other = await runOf(scan(10, { sign: 1, zones: [[60, 70, 0.2]], header: 'LMA' }));
    expect(lossAt(early, 64)).toBeLessThan(lossAt(early, 40));
    const [turned, kept, apart] = agreeOnSign([early, late, other]);
    expect(turned.trace.loss!.values[100]).toBe(-early.trace.loss!.values[100]);
    expect(turned.quality.map((each) => each.code)).toEqual(['sign-from-other-runs']);
    expect(kept).toBe(late);
    expect(apart).toBe(other);
  });
});
