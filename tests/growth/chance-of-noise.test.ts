import { describe, expect, it } from 'vitest';
import { judgeGrowth } from '../../analysis/growth/judge-growth.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import type { Survey } from '../../analysis/rope/survey.ts';
import { surveyOf } from '../support/survey-of.ts';

/** 200 m scanned once a year; each fault with the rate at which noise alone gives one so strong, in 100 m. */
function scan(year: number, faults: [number, number, number][]): Survey {
  const made = surveyOf({ id: `y${year}`, date: `${year}-06-01`, step: 0.02, loss: new Float64Array(10_000), faults: faults.map(([at, amplitude]) => [at, amplitude]) });
  return { ...made, condition: { ...made.condition, faults: made.condition.faults.map((fault, i) => ({ ...fault, falseCallsPer100m: faults[i][2] })) } };
}
const judge = async (surveys: readonly Survey[]) => (await judgeGrowth(surveys, { diameterMm: 30, loopLength: null }, noCheckpoint)).map((place) => [place.state, place.reason] as const);

describe('a fault that only the newest inspection shows', () => {
  it('is new where noise cannot give it on a rope of this length', async () => {
    expect((await judge([scan(2020, []), scan(2021, [[50, 12, 1e-6]])]))[0][0]).toBe('new');
  });

  it('is not called new where noise gives one so strong somewhere on the rope, and says so', async () => {
    // 0.05 in 100 m over 200 m: 0.1 expected, a chance of 10 %.
    const [[state, reason]] = await judge([scan(2020, []), scan(2021, [[50, 12, 0.05]])]);
    expect(state).toBe('stable');
    expect(reason).toMatch(/chance 10 %.+repeat the run/);
  });

  it('is not called new where earlier inspections gave indications as strong that later ones do not show', async () => {
    const stray: [number, number, number] = [120, 12, 1e-6];
    const states = (await judge([scan(2020, [stray]), scan(2021, [[50, 12, 1e-5]])])).map(([state]) => state);
    expect(states).toEqual(['stable', 'not-found']);
    const stronger = (await judge([scan(2020, [stray]), scan(2021, [[50, 12, 1e-7]])])).map(([state]) => state);
    expect(stronger).toEqual(['new', 'not-found']);
  });

  it('does not doubt what an earlier inspection showed too', async () => {
    const same: [number, number, number] = [50, 12, 0.05];
    expect((await judge([scan(2020, [same]), scan(2021, [same])]))[0][1]).not.toMatch(/noise alone/);
  });

  it('says where an earlier inspection left rope unseen within the bound of position', async () => {
    const earlier = surveyOf({ id: 'y2020', date: '2020-06-01', step: 0.02, loss: new Float64Array(10_000), unseen: [50.1, 60] });
    const bound = { positions: earlier.mapUncertainty.positions, values: earlier.mapUncertainty.values.map(() => 0.3) };
    const [[state, reason]] = await judge([{ ...earlier, mapUncertainty: bound }, scan(2021, [[50, 12, 1e-9]])]);
    expect(state).toBe('new');
    expect(reason).toMatch(/that of 2020-06-01 left rope unseen within the bound of position here \(0\.30 m\)/);
    expect((await judge([scan(2020, []), scan(2021, [[50, 12, 1e-9]])]))[0][1]).not.toMatch(/unseen/);
  });

  it('counts only like lengths where corrosion roughens LF', async () => {
    const rough = (zones: [number, number, number][]) => {
      const made = scan(2021, [[50, 12, 0.05]]);
      const zone = { id: 'z', where: { from: 48, to: 53 } as never, edgeUncertainty: 0.1, kind: 'corrosion' as const, meanLossPercent: 2, peakLossPercent: 2, textureRatio: 2, uncertaintyPercent: 0.2, lossRangePercent: null };
      return { ...made, condition: { ...made.condition, zones: zones.map(() => zone) } };
    };
    // 0.05 in 100 m over 5 m of such rope: a chance of 0.25 %; over all 200 m it were 10 %.
    const stateOfFault = async (zones: [number, number, number][]) => (await judgeGrowth([scan(2020, []), rough(zones)], { diameterMm: 30, loopLength: null }, noCheckpoint)).find((place) => place.subject === 'fault')!.state;
    expect(await stateOfFault([[48, 53, 2]])).toBe('new');
    expect(await stateOfFault([])).toBe('stable');
  });

  it('compares nothing where positions agree too poorly to tell places apart', async () => {
    const lost = (survey: Survey): Survey => ({ ...survey, mapUncertainty: { positions: survey.mapUncertainty.positions, values: survey.mapUncertainty.values.map(() => 50) } });
    const [[state, reason]] = await judge([scan(2020, []), lost(scan(2021, [[50, 12, 1e-9]]))]);
    expect(state).toBe('stable');
    expect(reason).toMatch(/not compared: positions of the inspections agree here to 50 m only/);
  });
});
