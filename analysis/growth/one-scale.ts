import type { Survey } from '../rope/survey.ts';
import { zoneGauge } from './zone-gauge.ts';
import { chanceDifferences } from './zone-series.ts';

/** Lengths over which means are compared: from the shortest reference length of the criteria to the longest. Metres. */
const LENGTHS = [0.2, 1, 4, 16] as const;
/** Spread where the sound rope is too short to show it: the middle of 0.1 to 0.5 % (common practice). Percent. */
const USUAL_SPREAD = 0.3;

/**
 * The surveys with their loss brought to one scale and one zero, so that a series over the dates shows the rope and not
 * the instruments. Judgements of a single inspection use the loss as measured, never this.
 */
export function onOneScale(surveys: readonly Survey[]): Survey[] {
  if (surveys.length < 2) return [...surveys];
  const gauge = zoneGauge(surveys, surveys.flatMap((survey) => survey.condition.zones.map((zone) => zone.where)));
  const differences = LENGTHS.map((length) => chanceDifferences(length, gauge));
  return surveys.map((survey, index) => {
    const { loss } = survey.rope;
    if (loss === null) return survey;
    const { gain, uncertainty } = gauge.gains[index];
    const zero = differences[1].zero[index];
    const level = LENGTHS.map((length, i) => ({ length, sigma: Math.max(0.01, differences[i].sigma[index] ?? USUAL_SPREAD) }));
    return { ...survey, rope: { ...survey.rope, loss: { ...loss, values: loss.values.map((value) => value / gain - zero) } }, comparison: { scaleUncertainty: uncertainty, level } };
  });
}
