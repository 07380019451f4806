import { ropePosition } from '../rope/units.ts';
import type { Interval } from '../rope/interval.ts';
import type { Survey } from '../rope/survey.ts';
import { brokenWires } from './broken-wire-counts.ts';
import type { Evidence, Measurement } from './criterion.ts';
import type { MeasureTaker } from './judged.ts';
import type { PointValue } from './point-measures.ts';
import { corrosionPoints, diameterSeverityPoints } from './point-measures.ts';
import { resolveLimit, windowInMetres } from './resolve-limit.ts';
import type { Clause } from './rule-set.ts';
import { brokenWireSeverity, combinedSeverity } from './severity.ts';

/**
 * Combined effect: severities found at the same position are added [from memory]. "The same position" is one zone of the clause's
 * window; broken wires are rated against the table over 6d and 30d, the higher rating counts. A mode that was not looked at adds
 * nothing, so the sum is a lower bound, and the note says what is missing.
 */
export const combinedSeverityMeasure: MeasureTaker = {
  along(clause, evidence, survey) {
    const modes = modesOf(clause, evidence, survey);
    if ('needs' in modes) return modes;
    const candidates = [...modes.diameter, ...modes.corrosion].map((point) => (point.from + point.to) / 2).concat(modes.breakPositions);
    if (candidates.length === 0) return { needs: 'broken wires, a diameter or a grade of corrosion at one place' };
    let worst: { where: Interval<'rope'>; value: number; note: string } | null = null;
    for (const centre of candidates) {
      const where = { from: ropePosition(centre - modes.width / 2), to: ropePosition(centre + modes.width / 2) };
      const rated = rate(where, evidence, survey, modes);
      if (worst === null || rated.value > worst.value) worst = { where, ...rated };
    }
    return { governing: { ...worst!, uncertainty: null, lowerBound: modes.missing.length > 0 && worst!.value >= NEAR_DISCARD, exact: false, note: [worst!.note, ...modes.missing.map((each) => `${each} not known`)].join('; ') }, along: null };
  },
  over(clause, evidence, survey, where): Measurement | null {
    const modes = modesOf(clause, evidence, survey);
    return 'needs' in modes ? null : { value: rate(where, evidence, survey, modes).value, uncertainty: null };
  },
};

const USUAL_TABLE = { drum: 'single-layer', mechanism: 'M1-M4', reading: 'printed' } as const;
/** A missing mode of medium severity would then complete the sum. */
const NEAR_DISCARD = 60;

interface Modes {
  readonly width: number;
  readonly six: { readonly clause: Clause; readonly limit: number } | null;
  readonly thirty: { readonly clause: Clause; readonly limit: number } | null;
  readonly breakPositions: readonly number[];
  readonly diameter: readonly PointValue[];
  readonly corrosion: readonly PointValue[];
  readonly missing: readonly string[];
}

function modesOf(clause: Clause, evidence: Evidence, survey: Survey): Modes | { needs: string } {
  const width = clause.window === null ? null : windowInMetres(clause.window, evidence.geometry);
  if (width === null) return { needs: 'the rope diameter' };
  const [six, thirty] = (['6d', '30d'] as const).map((window) => {
    const counted: Clause = { ...clause, measure: 'broken-wires', window: { length: window === '6d' ? 6 : 30, unit: 'd' }, limit: { kind: 'broken-wire-table', window, ...(clause.ratedAgainst ?? USUAL_TABLE) } };
    const limit = resolveLimit(counted, evidence.geometry);
    const judged = brokenWires.along(counted, evidence, survey, 1);
    return 'needs' in limit || 'needs' in judged ? null : { clause: counted, limit: limit.limit, worst: judged.governing };
  });
  const diameter = diameterSeverityPoints(clause, evidence, survey);
  const corrosion = corrosionPoints(clause, evidence, survey);
  const missing = [...(six ? [] : ['broken wires']), ...('needs' in diameter ? ['diameter'] : []), ...('needs' in corrosion ? ['corrosion'] : [])];
  if (missing.length === 3) return { needs: 'broken wires against their limit, a diameter with its reference, or a grade of corrosion' };
  return {
    width, six, thirty, missing,
    breakPositions: [six, thirty].flatMap((each) => (each && each.worst.value > 0 ? [(each.worst.where.from + each.worst.where.to) / 2] : [])),
    diameter: 'needs' in diameter ? [] : diameter.points, corrosion: 'needs' in corrosion ? [] : corrosion.points,
  };
}

function rate(where: Interval<'rope'>, evidence: Evidence, survey: Survey, modes: Modes): { value: number; note: string } {
  const breaks = Math.max(0, ...[modes.six, modes.thirty].map((each) => {
    if (each === null) return 0;
    const width = windowInMetres(each.clause.window!, evidence.geometry)!;
    const centre = (where.from + where.to) / 2;
    const count = brokenWires.over(each.clause, evidence, survey, { from: ropePosition(centre - width / 2), to: ropePosition(centre + width / 2) });
    return count === null ? 0 : brokenWireSeverity(count.value, each.limit);
  }));
  const worstOf = (points: readonly PointValue[]) => Math.max(0, ...points.filter((each) => each.to >= where.from && each.from <= where.to).map((each) => each.value));
  const diameter = worstOf(modes.diameter);
  const corrosion = worstOf(modes.corrosion);
  const { sum, word } = combinedSeverity([breaks, diameter, corrosion]);
  return { value: sum, note: `broken wires ${breaks.toFixed(0)} % + diameter ${diameter} % + corrosion ${corrosion} %: ${word}` };
}
