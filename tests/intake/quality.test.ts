import { describe, expect, it } from 'vitest';
import { THRESHOLDS } from '../../analysis/intake/thresholds.ts';
import { chance, normal } from '../corpus/scan-text.ts';
import { problemsOf, runOf } from '../support/run-of.ts';

interface Sample { x: number; lma: number; lf: number; v: number }

function live(length: number, step: number, seed: number): Sample[] {
  const random = chance(seed);
  let slow = 0;
  return Array.from({ length: Math.round(length / step) + 1 }, (_, i) => {
    slow += 0.1 * (0.3 * normal(random) - slow);
    return { x: i * step, lma: slow, lf: 10 * normal(random), v: 1 + 0.01 * normal(random) };
  });
}
const csv = (samples: readonly Sample[]) => `Position [m],LMA loss [%],LF [mV],Speed [m/s]\n${samples.map((s) => `${s.x.toFixed(3)},${s.lma.toFixed(4)},${s.lf.toFixed(3)},${s.v.toFixed(3)}`).join('\n')}\n`;
const change = (seed: number, alter: (s: Sample, i: number) => Partial<Sample>, length = 100, step = 0.005) => csv(live(length, step, seed).map((s, i) => ({ ...s, ...alter(s, i) })));
async function found(text: string, code: string, more = {}) {
  const run = await runOf(text, more);
  return run.quality.filter((each) => each.code === code);
}

describe('quality findings, each with its place', () => {
  it('finds nothing on a good run', async () => expect((await runOf(csv(live(100, 0.005, 1)), { ropeLength: 100 })).quality).toEqual([]));

  it('saturation of LF', async () => {
    const [first] = await found(change(2, (s) => ({ lf: Math.max(-200, Math.min(200, s.lf + 600 * Math.exp(-(((s.x - 40) / 0.02) ** 2)))) })), 'saturation');
    expect(first.where.from).toBeCloseTo(40, 1);
    expect(first.message).toContain('limit');
  });
  it('lone spikes of LMA, which are masked', async () => {
    const run = await runOf(change(3, (s, i) => (i % 5000 === 2500 ? { lma: s.lma + 8 } : {})));
    expect(run.quality.map((each) => each.code)).toEqual(['spikes']);
    expect([...run.trace.loss!.valid].filter((flag) => flag === 0)).toHaveLength(4);
    expect(run.covered).toHaveLength(1);
  });
  it('drift of LMA', async () => expect(await found(change(4, (s) => ({ lma: s.lma + 0.015 * s.x })), 'drift')).toHaveLength(1));
  it('noise of LMA', async () => expect(await found(change(5, (s, i) => ({ lma: s.lma + (i % 2 === 0 ? 1 : -1) * (0.8 + 0.1 * Math.sin(i)) })), 'noise')).toHaveLength(1));
  it('ramps at the ends', async () => {
    const ramps = await found(change(6, (s) => ({ lma: s.lma - 12 * Math.exp(-s.x / 0.5) })), 'end-ramp');
    expect(ramps).toHaveLength(1);
    expect(ramps[0].where.from).toBe(0);
  });
  it('sampling too coarse for a wire break', async () => expect(await found(change(7, () => ({}), 100, 0.02), 'coarse-sampling')).toHaveLength(1));
  it('a length that is not the rope\'s', async () => {
    expect(await found(csv(live(100, 0.005, 8)), 'length-disagrees', { ropeLength: 130 })).toHaveLength(1);
    expect(await found(csv(live(100, 0.005, 8)), 'length-disagrees', { ropeLength: 101 })).toHaveLength(0);
  });
  it('an endless rope that was run past its own start is no disagreement, twice round is', async () => {
    const overlap = csv(live(106, 0.005, 8));
    expect((await found(overlap, 'runs-past-start', { ropeLength: 100, loop: true }))[0]).toMatchObject({ level: 'info', message: expect.stringContaining('6.00 m were seen twice') });
    expect(await found(overlap, 'length-disagrees', { ropeLength: 100, loop: true })).toEqual([]);
    expect(await found(overlap, 'length-disagrees', { ropeLength: 100 })).toHaveLength(1);
    expect(await found(csv(live(140, 0.005, 8)), 'length-disagrees', { ropeLength: 100, loop: true })).toHaveLength(1);
    expect(await found(csv(live(90, 0.005, 8)), 'runs-past-start', { ropeLength: 100, loop: true })).toEqual([]);
  });
  it('speed outside the range and quick changes of it', async () => {
    const text = change(9, (s) => ({ v: s.x > 30 && s.x < 35 ? 4.5 : s.v }));
    const [range] = await found(text, 'speed-range');
    expect(range.where.from).toBeCloseTo(30, 1);
    expect(range.where.to).toBeCloseTo(35, 1);
    expect((await found(text, 'speed-change')).length).toBeGreaterThanOrEqual(2);
  });
  it('a leap of the encoder', async () => {
    const [leap] = await found(change(10, (s) => (s.x > 50 ? { x: s.x + 3 } : {})), 'encoder-jump');
    expect(leap.where.from).toBeCloseTo(50, 1);
    expect(leap.where.to).toBeCloseTo(53, 1);
  });
  it('a dead LF channel beside a live LMA', async () => {
    const [dead] = await found(change(11, (s) => (s.x > 20 && s.x < 24 ? { lf: 7.125 } : {})), 'dropout');
    expect(dead.message).toContain('LF');
    expect(dead.where.from).toBeCloseTo(20, 1);
  });
  it('a frozen instrument even where LMA is written in tenths', async () => {
    const run = await runOf(csv(live(100, 0.005, 12)).split('\n').map((line, i) => {
      const cells = line.split(',');
      if (i === 0 || cells.length < 4) return line;
      const frozen = Number(cells[0]) > 20 && Number(cells[0]) < 23;
      return [cells[0], frozen ? '0.1' : Number(cells[1]).toFixed(1), frozen ? '3.000' : cells[2], cells[3]].join(',');
    }).join('\n'));
    expect(run.covered.map((each) => [each.from, each.to].map((x) => Math.round(x)))).toEqual([[-0, 20], [23, 100]]);
  });
  it('rejects a run that shows almost nothing, with the reason', async () => {
    const run = await runOf(change(13, (s) => (s.x > 10 ? { lma: 0.5, lf: 1 } : {})));
    expect(run.rejected).toBe(true);
    expect(run.quality.find((each) => each.level === 'reject')!.message).toContain('not used');
  });
  it('gives every limit a reason and a provenance', () => {
    for (const each of Object.values(THRESHOLDS)) {
      expect(each.reason.length).toBeGreaterThan(20);
      expect(['published', 'memory', 'common-practice', 'derived']).toContain(each.provenance);
    }
  });
});

describe('files that cannot be used', () => {
  const rows = (cells: (i: number) => string) => Array.from({ length: 500 }, (_, i) => cells(i)).join('\n');
  it.each([
    ['an empty file', new Uint8Array(0), 'empty'],
    ['blanks only', new TextEncoder().encode(' \n \n\n'), 'blanks'],
    ['a binary file', Uint8Array.from({ length: 5000 }, (_, i) => (i * 97 + (i >> 3)) & 255), 'binary'],
    ['an image', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0, 0, 0, 1, 0, 0, 0, 1, 8, 6, 0, 0, 0]), 'binary'],
    ['prose', new TextEncoder().encode('Dear colleague,\nthe scan will follow.\n'), 'no table'],
    ['one column', new TextEncoder().encode(rows((i) => String(i / 10))), 'no table'],
    ['a handful of rows', new TextEncoder().encode('Position [m],LMA [%],LF\n0,1,2\n1,2,3\n2,3,4\n'), 'only 3 rows'],
    ['columns that look alike', new TextEncoder().encode(rows((i) => `${Math.sin(i * i).toFixed(3)},${Math.cos(i * i).toFixed(3)},${Math.sin(3 * i * i).toFixed(3)}`)), 'position'],
    ['two positions without names', new TextEncoder().encode(rows((i) => `${i},${i * 2},${Math.sin(i * i).toFixed(3)},${Math.cos(i * i).toFixed(3)}`)), 'position'],
    ['positions that stand still', new TextEncoder().encode(`Position [m],LMA [%],LF\n${rows((i) => `5,${Math.sin(i).toFixed(3)},${Math.cos(i * i).toFixed(3)}`)}`), 'position'],
  ])('%s', async (_, bytes, what) => {
    const problems = await problemsOf(bytes);
    expect(problems.length).toBeGreaterThan(0);
    expect(problems.map((each) => each.what).join(' ')).toContain(what);
    expect(problems.every((each) => each.file === 'scan.csv' && each.remedy.length > 5)).toBe(true);
  });

  it('names the columns there are where the record names one that is not', async () => {
    const [problem] = await problemsOf(csv(live(20, 0.005, 1)), { columns: { lma: { name: 'Area' } } });
    expect(problem).toMatchObject({ line: 1, column: 'Area' });
    expect(problem.remedy).toContain('LMA loss [%]');
  });

  it('stops where the checkpoint says so', async () => {
    const { readRun } = await import('../../analysis/intake/read-run.ts');
    const { Cancelled } = await import('../../analysis/rope/problem.ts');
    const { createHash, runRequest } = await import('../support/run-of.ts');
    await expect(readRun(runRequest(csv(live(20, 0.005, 1))), { checkpoint: () => Promise.reject(new Cancelled()), createHash })).rejects.toThrow(Cancelled);
  });
});
