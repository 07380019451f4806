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
});
