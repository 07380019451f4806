import type { Survey } from '../rope/survey.ts';
import { median } from '../signal/median.ts';
import { GROWTH } from './parameters.ts';

/**
 * The inspections that may stand in one series over the dates: the newest, and those whose positions agree with its within the
 * widest bound at which places are compared, judged by the median bound of each. Same order.
 */
export function comparableSurveys(surveys: readonly Survey[]): Survey[] {
  if (surveys.length === 0) return [];
  const newest = surveys[surveys.length - 1];
  return surveys.filter((survey) => survey === newest || Math.hypot(typicalBound(survey), typicalBound(newest)) <= GROWTH.widestBound);
}

function typicalBound({ mapUncertainty: { values } }: Survey): number {
  return values.length === 0 ? 0 : median(Float64Array.from(values));
}
