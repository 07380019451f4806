import type { Profile } from '../condition/condition.ts';
import { meanOver, runningSums } from '../growth/window-means.ts';
import type { RunningSums } from '../growth/window-means.ts';
import { intersectionOf } from '../rope/interval.ts';
import type { Interval } from '../rope/interval.ts';
import { profileAt } from '../rope/profile-at.ts';
import type { Survey } from '../rope/survey.ts';
import { widthOf } from './section-length.ts';
import type { SectionLength } from './section-length.ts';

/** Another length of the rope is compared where at least this share of it was seen [common practice]. */
const COMPARED_SHARE = 0.5;

/**
 * Mean loss over the seen part of a section, and in percent the share of all equally long lengths of this rope, at the same
 * inspection, that show less. Null without LMA or where nothing of the section was seen. Linear in samples.
 */
export function rankOfLoss(survey: Survey, section: SectionLength): { mean: number; percentile: number } | null {
  const { loss, start, step, length } = survey.rope;
  if (loss === null || length === 0) return null;
  const running = runningSums(loss, start, step);
  const mean = meanOfPieces(running, section.pieces);
  if (mean === null) return null;
  const width = widthOf(section);
  let below = 0;
  let all = 0;
  const last = start + (length - 0.5) * step - width;
  for (let i = 0; start + (i - 0.5) * step <= last + 1e-9; i += 1) {
    const from = start + (i - 0.5) * step;
    const other = meanOver(running, from, from + width);
    if (other.share < COMPARED_SHARE) continue;
    all += 1;
    if (other.mean < mean) below += 1;
  }
  return { mean, percentile: all > 0 ? (100 * below) / all : 50 };
}

function meanOfPieces(running: RunningSums, pieces: readonly Interval<'rope'>[]): number | null {
  let sum = 0;
  let weight = 0;
  for (const { from, to } of pieces) {
    const { mean, share } = meanOver(running, from, to);
    if (!(share > 0)) continue;
    sum += mean * share * (to - from);
    weight += share * (to - from);
  }
  return weight > 0 ? sum / weight : null;
}

/** Places at which a coarse profile is read over a section. */
const READINGS = 21;

/** A profile over the part of a section that was seen; empty where nothing was. */
function readings(profile: Profile<'rope'>, section: SectionLength, covered: readonly Interval<'rope'>[]): number[] {
  return intersectionOf(covered, section.pieces).flatMap(({ from, to }) =>
    Array.from({ length: READINGS }, (_, i) => profileAt(profile, from + ((i + 0.5) / READINGS) * (to - from))).filter((value) => value !== null));
}

/** Mean of a profile over what was seen of a section, or null. */
export function meanOfProfile(profile: Profile<'rope'>, section: SectionLength, covered: readonly Interval<'rope'>[]): number | null {
  const values = readings(profile, section, covered);
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Largest value of a profile over what was seen of a section, or null: what is hardest to find there. */
export function largestOfProfile(profile: Profile<'rope'>, section: SectionLength, covered: readonly Interval<'rope'>[]): number | null {
  const values = readings(profile, section, covered);
  return values.length === 0 ? null : Math.max(...values);
}
