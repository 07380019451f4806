import { expect, it } from 'vitest';
import { comparableSurveys } from '../../analysis/growth/comparable-surveys.ts';
import { surveyOf } from '../support/survey-of.ts';

const scan = (id: string, bounds: number[]) => {
  const made = surveyOf({ id, date: `${id}-06-01`, step: 0.02, loss: new Float64Array(1000) });
  return { ...made, mapUncertainty: { positions: bounds.map((_, i) => i) as never, values: bounds } };
};
const kept = (...scans: ReturnType<typeof scan>[]) => comparableSurveys(scans).map((each) => each.id);

it('makes a series of the newest inspection and those whose positions agree with its', () => {
  expect(kept(scan('2020', [0]), scan('2021', [0.1, 0.6, 0.1]), scan('2022', [0.05]))).toEqual(['2020', '2021', '2022']);
  expect(kept(scan('2020', [0]), scan('2021', [40, 40, 0.1]), scan('2022', [0.05]))).toEqual(['2020', '2022']);
  expect(kept(scan('2020', [0]), scan('2021', [0.1]), scan('2022', [300]))).toEqual(['2022']);
  expect(comparableSurveys([])).toEqual([]);
});
