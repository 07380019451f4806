import { describe, expect, it } from 'vitest';
import { positionAt } from '../../analysis/rope/trace.ts';
import { chance, normal } from '../corpus/scan-text.ts';
import { problemsOf, runOf } from '../support/run-of.ts';

type Sample = { x: number; lma: number | string; lf: number | string; t?: number; v?: number };

/** An averaged LMA with a length of loss, an LF with pulses: what a live scan looks like. */
function liveScan(length: number, step: number, seed: number): Sample[] {
  const random = chance(seed);
  let slow = 0;
  return Array.from({ length: Math.round(length / step) + 1 }, (_, i) => {
    const x = i * step;
    slow += 0.1 * (normal(random) * 0.15 - slow);
    return { x, lma: Number(((x > length * 0.6 && x < length * 0.7 ? 2.5 : 0) + slow + 0.02 * normal(random)).toFixed(4)), lf: Number((10 * normal(random) + (i % 997 === 500 ? 300 : 0)).toFixed(3)) + 0 };
  });
}
const text = (samples: readonly Sample[], decimals = 3, header = 'Position [m];LMA [%];LF [mV]') => `${header}\n${samples.map((s) => `${s.x.toFixed(decimals)};${s.lma};${s.lf}`).join('\n')}\n`;
const codes = (run: { quality: readonly { code: string }[] }) => run.quality.map((each) => each.code);

describe('cleaning to an even grid', () => {
  it('takes even samples over exactly, with no finding', async () => {
    const samples = liveScan(100, 0.005, 1);
    const { trace, covered, quality, rejected } = await runOf(text(samples));
    expect(trace.length).toBe(samples.length);
    expect([...trace.fault!.values]).toEqual(samples.map((s) => s.lf));
    expect(covered).toHaveLength(1);
    expect(quality).toEqual([]);
    expect(rejected).toBe(false);
  });

  it.each([[0.001, 3], [0.002, 3], [0.0015, 3], [0.01 / 3, 3], [0.0025, 3], [0.02, 2], [0.0078125, 3]])('takes steps of %d m written with %i decimals over as they are', async (step, decimals) => {
    const samples = liveScan(step < 0.005 ? 12 : 40, step, 21);
    const { trace, understanding } = await runOf(text(samples, decimals));
    expect(understanding.decisions.at(-1)).toContain('taken over');
    expect(trace.length).toBe(samples.length);
    expect([...trace.fault!.values]).toEqual(samples.map((s) => s.lf));
    expect(Math.abs(positionAt(trace, trace.length - 1) - samples.at(-1)!.x)).toBeLessThanOrEqual(10 ** -decimals);
  });

  it('keeps a grid with lone missing samples and one damaged position', async () => {
    const samples = liveScan(40, 0.005, 22).filter((_, i) => i % 777 !== 5).map((s, i) => (i === 3000 ? { ...s, x: s.x + 0.002 } : s));
    const { trace, understanding } = await runOf(text(samples));
    expect(understanding.decisions.at(-1)).toContain('taken over');
    for (const s of samples.filter((_, i) => i !== 3000)) expect(trace.fault!.values[Math.round(s.x / 0.005)]).toBe(s.lf);
    expect(trace.fault!.valid[5]).toBe(0);
  });

  it.each([[0.005, 2], [0.002, 2], [0.001, 2]])('spreads samples every %d m over positions with %i decimals instead of merging them', async (step, decimals) => {
    const samples = liveScan(25, step, 23);
    const { trace, quality } = await runOf(text(samples, decimals));
    expect(quality.map((each) => each.code)).toContain('coarse-positions');
    expect(trace.step).toBeCloseTo(step, 4);
    const pulses = samples.filter((s) => Number(s.lf) > 200);
    for (const pulse of pulses) {
      let best = -Infinity;
      for (let i = 0; i < trace.length; i += 1) if (Math.abs(positionAt(trace, i) - pulse.x) < 0.0101) best = Math.max(best, trace.fault!.values[i]);
      expect(best).toBeGreaterThan(0.6 * Number(pulse.lf));
    }
  });

  it('merges a stop into one sample and says so', async () => {
    const samples = liveScan(50, 0.005, 2);
    const stopped = [...samples.slice(0, 4000), ...Array.from({ length: 300 }, () => ({ ...samples[4000] })), ...samples.slice(4000)];
    const run = await runOf(text(stopped));
    expect(run.trace.length).toBe(samples.length);
    expect([...run.trace.fault!.values]).toEqual(samples.map((s) => s.lf));
    expect(codes(run)).toEqual(['stops']);
  });

  it('keeps the first pass where the rope ran back', async () => {
    const samples = liveScan(50, 0.005, 3);
    const again = samples.slice(3000, 4000).map((s) => ({ ...s, lf: Number(s.lf) + 5, lma: Number(s.lma) + 1 }));
    const back = [...samples.slice(0, 4000), ...again.slice(0, -1).reverse(), ...again, ...samples.slice(4000)];
    const run = await runOf(text(back));
    expect([...run.trace.fault!.values]).toEqual(samples.map((s) => s.lf));
    const found = run.quality.find((each) => each.code === 'backward')!;
    expect(found.where.from).toBeCloseTo(15, 1);
    expect(found.where.to).toBeCloseTo(20, 1);
  });

  it('leaves a gap masked and out of the coverage', async () => {
    const samples = liveScan(60, 0.005, 4).filter((s) => s.x < 20 || s.x > 23);
    const { trace, covered, quality } = await runOf(text(samples));
    expect(covered.map((each) => [Number(each.from.toFixed(2)), Number(each.to.toFixed(2))])).toEqual([[-0, 20], [23, 60]]);
    expect(quality.some((each) => each.code === 'gap' || each.code === 'encoder-jump')).toBe(true);
    const middle = Math.round((21.5 - trace.start) / trace.step);
    expect(trace.loss!.valid[middle]).toBe(0);
    expect(trace.fault!.valid[middle]).toBe(0);
  });

  it.each([['blank', ''], ['NaN', 'NaN'], ['-9999', '-9999'], ['n/a', 'n/a'], ['a frozen value', '0.1234'], ['zero', '0']])('masks a dropout written as %s', async (_, mark) => {
    const samples = liveScan(60, 0.005, 5).map((s) => (s.x >= 30 && s.x < 33 ? { ...s, lma: mark, lf: mark } : s));
    const { covered, quality, rowsRejected } = await runOf(text(samples));
    expect(rowsRejected).toBe(0);
    expect(covered).toHaveLength(2);
    expect(covered[0].to).toBeCloseTo(30, 1);
    expect(covered[1].from).toBeCloseTo(33, 1);
    expect(quality.map((each) => each.code)).toContain('dropout');
  });

  it('does not take rounded quiet noise for a frozen channel', async () => {
    const samples = liveScan(60, 0.005, 6).map((s) => ({ ...s, lma: Number(s.lma).toFixed(1) }));
    const { covered } = await runOf(text(samples));
    expect(covered).toHaveLength(1);
    expect(covered[0].to - covered[0].from).toBeCloseTo(60, 1);
  });

  it('reads a file whose positions fall, and says so', async () => {
    const samples = liveScan(50, 0.005, 7);
    const run = await runOf(text([...samples].reverse()));
    expect(run.positionsFell).toBe(true);
    expect([...run.trace.fault!.values]).toEqual(samples.map((s) => s.lf));
  });

  it('keeps uneven samples in place: a pulse stays within a sample step', async () => {
    const random = chance(8);
    let x = 0;
    const samples: Sample[] = [];
    while (x < 50) {
      samples.push({ x, lma: Number((0.1 * normal(random)).toFixed(4)), lf: Number((500 * Math.exp(-(((x - 20.123) / 0.02) ** 2)) + normal(random)).toFixed(3)) });
      x += 0.002 + 0.006 * random();
    }
    const { trace } = await runOf(text(samples, 4));
    let peak = 0;
    for (let i = 0; i < trace.length; i += 1) if (trace.fault!.values[i] > trace.fault!.values[peak]) peak = i;
    expect(Math.abs(positionAt(trace, peak) - 20.123)).toBeLessThan(0.006);
    expect(trace.fault!.values[peak]).toBeGreaterThan(450);
    expect(trace.fault!.valid.every((flag) => flag === 1)).toBe(true);
  });

  it('rejects text in a numeric column with its line and goes on', async () => {
    const samples = liveScan(20, 0.005, 9);
    const lines = text(samples).split('\n');
    lines[1000] = lines[1000].replace(/;[^;]*;/, ';abc;');
    const run = await runOf(lines.join('\n'));
    expect(run.rowsRejected).toBe(1);
    expect(run.quality.find((each) => each.code === 'row-rejected')!.message).toContain('Line 1001, column LMA [%]: "abc" is not a number');
  });

  it('refuses a file in which most rows hold text', async () => {
    const lines = text(liveScan(20, 0.005, 10)).split('\n').map((line, i) => (i > 300 ? line.replace(/;[^;]*;/, ';abc;') : line));
    const problems = await problemsOf(lines.join('\n'));
    expect(problems[0]).toMatchObject({ file: 'scan.csv', line: 302, column: 'LMA [%]', what: '"abc" is not a number' });
  });

  it.each([[1, 1], [2, 1], [4, 1], [8, 1], [12, 1]])('never takes a number that the end of the file cuts through (%i bytes short)', async (short, rejected) => {
    const samples = liveScan(20, 0.005, 12).map((s) => ({ ...s, lf: Number(s.lf).toFixed(3), lma: Number(s.lma).toFixed(4) }));
    const whole = text(samples).trimEnd();
    const run = await runOf(whole.slice(0, whole.length - short));
    expect(run.rowsRejected).toBe(rejected);
    expect(run.rows).toBe(samples.length - 1);
  });

  it('takes a last line without its line end where it is whole', async () => {
    const samples = liveScan(20, 0.005, 12).map((s) => ({ ...s, lf: Number(s.lf).toFixed(3) }));
    expect((await runOf(text(samples).trimEnd())).rows).toBe(samples.length);
  });

  it('drops lone positions far off and keeps the rest', async () => {
    const samples = liveScan(30, 0.005, 11).map((s, i) => (i === 2500 ? { ...s, x: 9999.5 } : s));
    const run = await runOf(text(samples));
    expect(run.trace.length).toBe(samples.length);
    expect(run.trace.fault!.valid[2500]).toBe(0);
    expect(codes(run)).toContain('encoder-jump');
  });
});

describe('units', () => {
  it('reads feet by the exact definition', async () => {
    const samples = liveScan(30, 0.005, 12).map((s) => ({ ...s, x: s.x / 0.3048 }));
    const { trace } = await runOf(text(samples, 5, 'Position [ft];LMA [%];LF [mV]'));
    expect(positionAt(trace, trace.length - 1)).toBeCloseTo(30, 4);
  });

  it('reads counts by pulses per metre, and asks where they are missing', async () => {
    const samples = liveScan(30, 0.005, 13).map((s, i) => ({ ...s, x: i * 10 }));
    const columns = { position: { unit: 'counts', pulses_per_metre: 2000 } } as const;
    const { trace } = await runOf(text(samples, 0, 'Encoder [counts];LMA [%];LF [mV]'), { columns });
    expect(trace.step).toBe(0.005);
    expect((await problemsOf(text(samples, 0, 'Encoder [counts];LMA [%];LF [mV]')))[0].what).toContain('pulses');
  });

  it('works out positions from time and speed', async () => {
    const samples = liveScan(40, 0.005, 14);
    const csv = `Time [s],Speed [m/min],LMA [%],LF\n${samples.map((s, i) => `${(i * 0.01).toFixed(2)},30,${s.lma},${s.lf}`).join('\n')}\n`;
    const run = await runOf(csv);
    expect(positionAt(run.trace, run.trace.length - 1)).toBeCloseTo(40, 6);
    expect(codes(run)).toContain('position-from-speed');
  });

  it.each([['mm2 of loss', 1, 0], ['mm2 of metal that is left', -1, 400]])('reads LMA as %s', async (_, factor, offset) => {
    const samples = liveScan(40, 0.005, 15);
    const csv = text(samples.map((s) => ({ ...s, lma: (offset + factor * 4 * Number(s.lma)).toFixed(6) })), 3, 'Position [m];LMA [mm2];LF [mV]');
    const { trace } = await runOf(csv, { metallicArea: 400 });
    samples.forEach((s, i) => expect(Math.abs(trace.loss!.values[i] - Number(s.lma))).toBeLessThan(1e-6));
    expect((await problemsOf(csv))[0].what).toContain('mm2');
  });

  it.each([['positive', 1], ['negative', -1]])('finds that loss is %s', async (_, sign) => {
    const samples = liveScan(80, 0.005, 16);
    const { trace } = await runOf(text(samples.map((s) => ({ ...s, lma: sign * Number(s.lma) }))));
    expect(trace.loss!.values[Math.round(52 / 0.005)]).toBeGreaterThan(2);
  });
});
