import type { Interval } from '../rope/interval.ts';
import { ropePosition } from '../rope/units.ts';
import type { Survey } from '../rope/survey.ts';
import type { Evidence } from './criterion.ts';
import { CALLIPER_UNCERTAINTY, diameterReadings, inMillimetres, referenceDiameter } from './diameter-readings.ts';
import type { MeasureTaker } from './judged.ts';
import type { Clause } from './rule-set.ts';
import { diameterSeverity, severityOfGrade, uniformDecrease } from './severity.ts';
import type { SeverityCore } from './severity.ts';
import { worseIsMore } from './compare.ts';

/** A value that was measured or graded at one place. */
export interface PointValue {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly uncertainty: number | null;
  readonly note: string;
}

export type Points = { readonly points: readonly PointValue[] } | { readonly needs: string };

/** A measure that is known at single places only: the worst of them governs, and nothing is said of the rope between. */
export function pointMeasure(take: (clause: Clause, evidence: Evidence, survey: Survey) => Points): MeasureTaker {
  return {
    along(clause, evidence, survey) {
      const found = take(clause, evidence, survey);
      if ('needs' in found) return found;
      const more = worseIsMore(clause.comparator);
      const worst = found.points.reduce((a, b) => ((more ? b.value > a.value : b.value < a.value) ? b : a));
      const sorted = [...found.points].sort((a, b) => a.from - b.from);
      return {
        governing: { where: place(worst), value: worst.value, uncertainty: worst.uncertainty, lowerBound: false, exact: false, note: [worst.note, `${found.points.length} place${found.points.length === 1 ? '' : 's'} measured`].filter((text) => text !== '').join('; ') },
        along: { positions: sorted.map((each) => (each.from + each.to) / 2), values: sorted.map((each) => each.value) },
      };
    },
    over(clause, evidence, survey, where) {
      const found = take(clause, evidence, survey);
      if ('needs' in found) return null;
      const inside = found.points.filter((each) => each.to >= where.from && each.from <= where.to);
      if (inside.length === 0) return null;
      const more = worseIsMore(clause.comparator);
      const worst = inside.reduce((a, b) => ((more ? b.value > a.value : b.value < a.value) ? b : a));
      return { value: worst.value, uncertainty: worst.uncertainty };
    },
  };
}

const place = (point: PointValue): Interval<'rope'> => ({ from: ropePosition(point.from), to: ropePosition(point.to) });

/** Reduction (or, with sign -1, increase) of diameter in percent of nominal or of the rope's own reference. */
export const diameterChange = (sign: 1 | -1) => (clause: Clause, evidence: Evidence, survey: Survey): Points => {
  const nominal = evidence.geometry.diameterMm;
  const readings = diameterReadings(survey);
  if (readings.length === 0) return { needs: 'a diameter measured at this inspection' };
  const reference = clause.reference ?? 'nominal';
  if (reference !== 'baseline' && nominal === null) return { needs: 'the nominal rope diameter' };
  const own = reference === 'nominal' ? null : referenceDiameter(evidence, survey);
  if (reference !== 'nominal' && own === null) return { needs: 'the reference diameter measured just after running-in (a diameter note marked "reference" or "baseline")' };
  const from = own?.diameter ?? nominal!;
  const of = reference === 'baseline' ? own!.diameter : nominal!;
  return {
    points: readings.map((each) => ({
      from: each.from, to: each.to, value: sign * uniformDecrease(from, each.diameter, of), uncertainty: (100 * CALLIPER_UNCERTAINTY) / Math.sqrt(each.readings) / of,
      note: `measured ${each.diameter.toFixed(2)} mm against ${from.toFixed(2)} mm (${own?.source ?? 'nominal'})`,
    })),
  };
};

export function severityCore(evidence: Evidence): SeverityCore | null {
  const { core, rotationResistant } = evidence.geometry;
  if (rotationResistant) return 'rotation-resistant';
  return core === 'fibre' || core === 'steel' ? core : null;
}

/** Severity band of the uniform decrease: 0, 20 ... 100 %. */
export function diameterSeverityPoints(clause: Clause, evidence: Evidence, survey: Survey): Points {
  const core = severityCore(evidence);
  const decrease = diameterChange(1)({ ...clause, reference: 'running-in' }, evidence, survey);
  if ('needs' in decrease) return decrease;
  if (core === null) return { needs: 'the kind of core (fibre, steel or rotation-resistant)' };
  return { points: decrease.points.map((each) => ({ ...each, value: diameterSeverity(each.value, core), uncertainty: null, note: `uniform decrease ${each.value.toFixed(2)} %, ${each.note}` })) };
}

/** Grades of corrosion, in words or percent. A grade that is not understood is never taken as none. */
export function corrosionPoints(_clause: Clause, _evidence: Evidence, survey: Survey): Points {
  const notes = survey.notes.filter((note) => note.kind === 'corrosion-external' || note.kind === 'corrosion-internal');
  const points = notes.flatMap((note) => {
    const value = severityOfGrade(note.severity, note.value, note.unit);
    return value === null ? [] : [{ from: note.from, to: note.to, value, uncertainty: null, note: `graded ${note.severity || `${note.value} %`}` }];
  });
  if (points.length > 0) return { points };
  if (notes.length > 0) return { needs: `a grade of corrosion that can be understood (slight, medium, high, very high, discard, or percent); noted: ${notes.map((note) => note.severity || 'nothing').join(', ')}` };
  return { needs: 'a visual grade of corrosion (external or internal)' };
}

/** Loss of outer wire diameter in percent: as noted, or from the remaining thickness and the nominal wire. */
export function outerWireWear(_clause: Clause, evidence: Evidence, survey: Survey): Points {
  const notes = survey.notes.filter((note) => note.kind === 'outer-wire-wear' && note.value !== null);
  const wire = evidence.geometry.outerWireDiameterMm;
  const points = notes.flatMap((note): PointValue[] => {
    if (note.unit.trim() === '%') return [{ from: note.from, to: note.to, value: note.value!, uncertainty: null, note: 'as noted' }];
    const left = inMillimetres(note);
    return left === null || wire === null ? [] : [{ from: note.from, to: note.to, value: (100 * (wire - left)) / wire, uncertainty: (100 * CALLIPER_UNCERTAINTY) / wire, note: `${left} mm left of a nominal outer wire of ${wire.toFixed(2)} mm` }];
  });
  if (points.length > 0) return { points };
  return { needs: notes.length > 0 ? 'the original outer wire diameter' : 'the wear of outer wires, measured (percent of their diameter, or mm left)' };
}

/** Change of lay length in percent, either way, from the stated lay length or the first one measured. */
export function layLengthChange(_clause: Clause, evidence: Evidence, survey: Survey): Points {
  const readings = (of: Survey) => of.notes.filter((note) => note.kind === 'lay-length').flatMap((note) => {
    const value = inMillimetres(note);
    return value === null ? [] : [{ note, value }];
  });
  const here = readings(survey);
  if (here.length === 0) return { needs: 'a lay length measured at this inspection' };
  const stated = evidence.geometry.sources.find((each) => each.field === 'lay_length_mm' && each.source.startsWith('stated'));
  const first = evidence.surveys.find((each) => readings(each).length > 0 && each.date < survey.date);
  const firstReadings = first ? readings(first) : [];
  const reference = stated ? Number(stated.value) : firstReadings.length > 0 ? firstReadings.reduce((sum, each) => sum + each.value, 0) / firstReadings.length : null;
  if (reference === null) return { needs: 'the lay length of the new rope' };
  return { points: here.map(({ note, value }) => ({ from: note.from, to: note.to, value: (100 * Math.abs(value - reference)) / reference, uncertainty: null, note: `${value} mm against ${reference.toFixed(1)} mm` })) };
}

/** Gap under a straightedge in percent of the rope diameter. */
export function waviness(_clause: Clause, evidence: Evidence, survey: Survey): Points {
  const d = evidence.geometry.diameterMm;
  const notes = survey.notes.filter((note) => note.kind === 'waviness' && note.value !== null);
  if (notes.length === 0) return { needs: 'the gap of a wavy length, measured under a straightedge' };
  if (d === null) return { needs: 'the rope diameter' };
  const points = notes.flatMap((note) => {
    if (note.unit.trim() === '%') return [{ from: note.from, to: note.to, value: note.value!, uncertainty: null, note: 'as noted' }];
    const gap = inMillimetres(note);
    return gap === null ? [] : [{ from: note.from, to: note.to, value: (100 * gap) / d, uncertainty: null, note: `gap ${gap} mm` }];
  });
  return points.length > 0 ? { points } : { needs: 'the unit of the gap of a wavy length' };
}

/** 1 where something was noted that the rule does not put into numbers, 0 where it was noted as absent. */
export const presence = (kinds: readonly string[], needs: string) => (_clause: Clause, _evidence: Evidence, survey: Survey): Points => {
  const notes = survey.notes.filter((note) => kinds.includes(note.kind));
  if (notes.length === 0) return { needs };
  return {
    points: notes.map((note) => {
      const absent = /^(none|no|nil|0|absent|good|sound|ok|in order)\b/i.test(note.severity.trim()) || (note.value === 0 && note.severity.trim() === '');
      return { from: note.from, to: note.to, value: absent ? 0 : 1, uncertainty: null, note: [note.kindAsWritten, note.severity, note.remark].filter((text) => text !== '').join(', ') };
    }),
  };
};
