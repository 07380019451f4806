import { describe, expect, it } from 'vitest';
import { compareNoise } from '../../analysis/intake/compare-noise.ts';
import { describeUnderstanding } from '../../analysis/intake/describe-understanding.ts';
import { positionAt } from '../../analysis/rope/trace.ts';
import { chance, normal } from '../corpus/scan-text.ts';
import { problemsOf, runOf } from '../support/run-of.ts';

type Cells = (x: number, lma: number, lf: number, i: number) => readonly (string | number)[];
const PLAIN: Cells = (x, lma, lf) => [x.toFixed(3), lma.toFixed(4), lf.toFixed(2)];

/** 60 m of a live scan with 2 % lost between 30 and 36 m; LMA is averaged, LF has a pulse every 10 m. */
function scan(header: string, cells: Cells = PLAIN, { step = 0.005, zone = 2, seed = 3, length = 60, noise = 1 } = {}): string {
  const random = chance(seed);
  let slow = 0;
  const delimiter = header.includes(';') ? ';' : ',';
  const rows = Array.from({ length: Math.round(length / step) + 1 }, (_, i) => {
    const x = i * step;
    slow += (step / 0.3) * (0.5 * normal(random) - slow);
    const lma = (x > 30 && x < 36 ? zone : 0) + slow + 0.02 * noise * normal(random);
    return cells(x, lma, 10 * noise * normal(random) + (i % Math.round(10 / step) === 100 ? 200 : 0), i).join(delimiter);
  });
  return `${header}\n${rows.join('\n')}\n`;
}
const codes = (run: { quality: readonly { code: string }[] }) => run.quality.map((each) => each.code);
const rolesOf = (run: { understanding: { columns: readonly { role: string }[] } }) => run.understanding.columns.map((each) => each.role);
const lossAt = (run: Awaited<ReturnType<typeof runOf>>, x: number) => run.trace.loss!.values[Math.round((x - run.trace.start) / run.trace.step)];

describe('simple files, as a test of another program would write them', () => {
  it.each([['position_m,lma_percent,lf_mv', 1], ['Distance (ft);LMA %;LF', 0.3048], ['pos_mm,lma_pct,lf', 0.001], ['km,lma_percent,lf_mv', 1000], ['ft,LMA %,LF', 0.3048]])('%s', async (header, unit) => {
    for (const sign of [1, -1]) {
      const run = await runOf(scan(header, (x, lma, lf) => [(x / unit).toFixed(6), (sign * lma).toFixed(4), lf.toFixed(2)]));
      expect(rolesOf(run)).toEqual(['position', 'lma', 'lf']);
      expect(positionAt(run.trace, run.trace.length - 1)).toBeCloseTo(60, 3);
      expect(lossAt(run, 33)).toBeGreaterThan(1.5);
      expect(codes(run)).toEqual([]);
    }
  });

  it.each([0.001, 0.002, 0.005, 0.01, 0.02])('a step of %d m', async (step) => {
    const run = await runOf(scan('position_m,lma_percent,lf_mv', PLAIN, { step }));
    expect(run.trace.step).toBe(step);
    expect(codes(run)).toEqual(step > 0.01 ? ['coarse-sampling'] : []);
  });

  it.each([['speed_ft_min', 60 / 0.3048], ['speed_m_min', 60], ['speed_km_h', 3.6], ['speed_ft_per_min', 60 / 0.3048], ['speed_mps', 1], ['v_m_s', 1]])('%s is m/s after reading', async (name, factor) => {
    const run = await runOf(scan(`position_m,lma_percent,lf_mv,${name}`, (x, lma, lf, i) => [...PLAIN(x, lma, lf, i), (1.25 * factor).toFixed(4)]));
    expect(run.trace.speed!.values[100]).toBeCloseTo(1.25, 4);
  });

  it('sound rope: the sign is assumed, and it says so', async () => {
    const run = await runOf(scan('position_m,lma_percent,lf_mv', PLAIN, { zone: 0 }));
    expect(codes(run)).toEqual(['sign-assumed']);
  });

  it('positions without a unit: metres are assumed, the louder the less fits the record', async () => {
    const text = scan('position,lma,lf');
    expect((await runOf(text)).quality.map((each) => [each.code, each.level])).toEqual([['unit-assumed', 'info']]);
    expect((await runOf(text, { ropeLength: 60 })).quality).toEqual([]);
    expect((await runOf(text, { ropeLength: 250 })).quality.map((each) => [each.code, each.level])).toContainEqual(['unit-assumed', 'warning']);
    const feet = await runOf(scan('position,lma,lf', (x, lma, lf) => [(x / 0.3048).toFixed(4), lma.toFixed(4), lf.toFixed(2)]), { ropeLength: 60 });
    expect(positionAt(feet.trace, feet.trace.length - 1)).toBeCloseTo(60, 3);
  });

  it('counts under any of their names ask for the pulses of a metre and are never taken for millimetres', async () => {
    for (const name of ['counts', 'encoder_counts', 'pulses', 'Encoder [counts]', 'ticks']) {
      const text = scan(`${name},lma_percent,lf_mv`, (_, lma, lf, i) => [i * 10, lma.toFixed(4), lf.toFixed(2)]);
      expect((await problemsOf(text))[0]).toMatchObject({ line: 1, column: name, what: 'positions are counts of pulses, and the pulses of a metre are not known' });
      expect((await runOf(text, { columns: { position: { unit: 'counts', pulses_per_metre: 2000 } } })).trace.step).toBe(0.005);
    }
  });
});

describe('what was not measured', () => {
  it.each(['NaN', '', '-', '-9999', 'n/a', 'null'])('a length written as %s is not covered', async (mark) => {
    const run = await runOf(scan('position_m,lma_percent,lf_mv', (x, lma, lf, i) => (x > 10 && x < 13 ? [x.toFixed(3), mark, mark] : PLAIN(x, lma, lf, i))));
    expect(run.covered.map((each) => [each.from, each.to].map((v) => Math.round(v)))).toEqual([[-0, 10], [13, 60]]);
    expect(codes(run)).toEqual(['dropout', 'dropout']);
  });

  it('rows whose position is a mark are rejected, and the length is a gap', async () => {
    const run = await runOf(scan('position_m,lma_percent,lf_mv', (x, lma, lf, i) => (x > 10 && x < 13 ? ['-9999', '-9999', '-9999'] : PLAIN(x, lma, lf, i))));
    expect(run.rowsRejected).toBe(599);
    expect(run.trace.start).toBe(0);
    expect(run.covered.map((each) => [each.from, each.to].map((v) => Math.round(v)))).toEqual([[-0, 10], [13, 60]]);
    expect(codes(run)).toContain('row-rejected');
    expect(codes(run)).not.toContain('backward');
  });

  it('a scan that passes 9999 keeps that sample', async () => {
    const run = await runOf(scan('position_m,lma_percent,lf_mv', (x, lma, lf) => [(x + 9970).toFixed(3), lma.toFixed(4), lf.toFixed(2)]));
    expect(run.rowsRejected).toBe(0);
    expect(run.trace.fault!.valid.every((flag) => flag === 1)).toBe(true);
  });

  it('a channel that never moves is left out, and the other is still judged', async () => {
    const noFault = await runOf(scan('position_m,lma_percent,lf_mv', (x, lma) => [x.toFixed(3), lma.toFixed(4), 0]));
    expect([noFault.trace.fault, noFault.rejected, codes(noFault)]).toEqual([null, false, ['dead-channel']]);
    const noLoss = await runOf(scan('position_m,lma_percent,lf_mv', (x, _, lf) => [x.toFixed(3), '0.00', lf.toFixed(2)]));
    expect([noLoss.trace.loss, noLoss.rejected, codes(noLoss)]).toEqual([null, false, ['dead-channel']]);
    expect(noLoss.covered).toHaveLength(1);
    const neither = await runOf(scan('position_m,lma_percent,lf_mv', (x) => [x.toFixed(3), '0.00', 0]));
    expect([neither.rejected, neither.covered]).toEqual([true, []]);
  });
});

describe('slip suspects', () => {
  const header = 'time_s,position_m,speed_m_s,lma_percent,lf_mv';
  // The wheel falls 80 mm behind at 20 m; the rope's true way is x.
  const withSlip = (slip: number): Cells => {
    const random = chance(5);
    return (x, lma, lf) => [x.toFixed(4), (x - (x > 20 ? Math.min(slip, (x - 20) / 4) : 0)).toFixed(4), (1 + 0.01 * normal(random)).toFixed(4), lma.toFixed(4), lf.toFixed(2)];
  };
  it('show where speed and time say another way than the positions', async () => {
    const run = await runOf(scan(header, withSlip(0.08)));
    const found = run.quality.filter((each) => each.code === 'slip-suspect');
    expect(found).toHaveLength(1);
    expect(found[0].where.from).toBeLessThan(20.3);
    expect(found[0].where.to).toBeGreaterThan(20);
  });
  it('are silent where they agree, and where the speed is a setting', async () => {
    expect(codes(await runOf(scan(header, withSlip(0))))).toEqual([]);
    expect(codes(await runOf(scan(header, (x, lma, lf) => [x.toFixed(4), x.toFixed(4), '1', lma.toFixed(4), lf.toFixed(2)])))).toEqual([]);
  });
});

describe('noise against the other runs', () => {
  it('names the run that stands out, and only that', async () => {
    const runs = await Promise.all([1, 1, 1, 4].map((noise, n) => runOf(scan('position_m,lma_percent,lf_mv', PLAIN, { seed: 10 + n, noise }))));
    expect(compareNoise(runs).map((run) => codes(run))).toEqual([[], [], [], ['noise-against-runs', 'noise-against-runs']]);
  });
  it('does not compare another instrument or another step', async () => {
    const quiet = await runOf(scan('position_m,lma_percent,lf_mv', PLAIN, { seed: 20 }));
    const other = await runOf(scan('position_m,lma_percent,lf_v', PLAIN, { seed: 21, noise: 4 }));
    const coarse = await runOf(scan('position_m,lma_percent,lf_mv', PLAIN, { seed: 22, noise: 4, step: 0.01 }));
    expect(compareNoise([quiet, other, coarse]).map((run) => codes(run))).toEqual([[], [], []]);
  });
});

it('says in words how a file was read', async () => {
  const lines = describeUnderstanding(await runOf(scan('Distance (ft);LMA %;LF')));
  expect(lines[0]).toContain('column 1 "Distance (ft)": position along the rope in ft');
  expect(lines.join('\n')).toContain('fields parted by semicolon, decimal point');
  expect(lines.join('\n')).toContain('loss is positive');
});

describe('files too small to be a scan say so in one line each', () => {
  it.each([
    ['three rows', 'position_m,lma_percent,lf_mv\n0,1,2\n1,2,3\n2,1,2\n', 2, 'only 3 rows'],
    ['a header only', 'position_m,lma_percent,lf_mv\n', 1, 'a header and no rows'],
    ['one column', 'position_m\n0\n1\n2\n3\n', 1, 'no table'],
    ['time without speed', scan('time_s,lma_percent,lf_mv'), 1, 'no column can be told to be the position'],
  ])('%s', async (_, text, line, what) => {
    const [problem] = await problemsOf(text);
    expect(problem.line).toBe(line);
    expect(problem.what).toContain(what);
    expect(`${problem.what}${problem.remedy}`).not.toContain('\n');
  });
});
