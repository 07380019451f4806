import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Survey } from '../../analysis/rope/survey.ts';
import { rankOfLoss } from '../../analysis/section/measure-section.ts';
import { sectionHistory } from '../../analysis/section/section-history.ts';
import { sectionLength } from '../../analysis/section/section-length.ts';
import { surveyOf as ropeSurvey } from '../criteria/rope-for-tests.ts';
import type { SurveyParts } from '../criteria/rope-for-tests.ts';
import { analysisOf } from './analysis-of.ts';

/** A kilometre's worth of habits on 100 m: quiet rope, the end beyond 90 m never reached, a zone at 40 to 46 m that appears in 2024. */
const noise = (at: number, year: number) => 0.05 * Math.sin(at * 37.7 + year * 1.7) + 0.03 * Math.sin(at * 5.3);
const scan = (year: number, more: Partial<SurveyParts> = {}): Survey => {
  const made = ropeSurvey({
    id: `y${year}`, date: `${year}-06-01`, blind: [[90, 100]], loss: (at) => noise(at, year) + (year >= 2024 && at >= 40 && at < 46 ? 1.5 * (year - 2023) : 0),
    zones: year >= 2024 ? [{ where: { from: 40, to: 46 } as never, kind: 'corrosion', meanLossPercent: 1.5 * (year - 2023) }] : [], ...more,
  });
  const profile = (value: (at: number) => number) => ({ positions: [0, 50, 100] as never, values: [0, 50, 100].map(value) });
  return { ...made, condition: { ...made.condition, smallestZoneLoss: profile((at) => 0.2 + at / 100), texture: profile(() => 1.2) }, mapUncertainty: profile(() => 0.04) };
};
const rope = (surveys: readonly Survey[], more = {}) => analysisOf({ surveys, length: 100, ...more });
const ask = async (analysis: Awaited<ReturnType<typeof rope>>, at: number, halfWidth: number, date: string | null = null) => (await sectionHistory(analysis, { at, halfWidth, date })).section;

describe('the answer about one section', () => {
  it('is indicated where any inspection shows damage, and names the first', async () => {
    const section = await ask(await rope([2022, 2023, 2024, 2025].map((year) => scan(year))), 42, 2);
    expect(section.finding).toBe('indicated');
    expect(section.inspections.map((each) => each.finding)).toEqual(['not-indicated', 'not-indicated', 'indicated', 'indicated']);
    expect(section.reason).toMatch(/2 of 4 inspections show damage here, first that of 2024-06-01/);
    expect(section.growth.map((each) => each.state)).toEqual(['growing']);
  });

  it('is not-indicated only where nearly all of it was seen and nothing shows', async () => {
    const section = await ask(await rope([scan(2022), scan(2023)]), 20, 2);
    expect(section.finding).toBe('not-indicated');
    expect(section.inspections[0]).toMatchObject({ coverage_share: 1, faults: [], zones: [], notes: [] });
  });

  it('is not-inspected where no head came, in part or in whole, whatever lies beside it', async () => {
    const analysis = await rope([scan(2022), scan(2023)]);
    const never = await ask(analysis, 95, 2);
    expect(never).toMatchObject({ finding: 'not-inspected', criteria: [], growth: [] });
    expect(never.inspections[1]).toMatchObject({ coverage_share: 0, mean_loss_percent: null, loss_rank_percentile: null, texture_ratio: null, smallest_detectable_loss_percent: null });
    const half = await ask(analysis, 90, 2);
    expect(half.finding).toBe('not-inspected');
    expect(half.inspections[0].coverage_share).toBeCloseTo(0.5, 6);
    expect(half.reason).toMatch(/NOT INSPECTED/);
    expect((await ask(analysis, -50, 2)).finding).toBe('not-inspected');
  });

  it('is not-inspected where a gap lies on the very place that was asked about', async () => {
    const section = await ask(await rope([scan(2022, { blind: [[20, 20.1], [90, 100]] })]), 20.05, 2);
    expect(section.inspections[0].coverage_share).toBeGreaterThan(0.9);
    expect(section.finding).toBe('not-inspected');
  });

  it('says of a length seen once and not since when it was last seen', async () => {
    const section = await ask(await rope([scan(2022), scan(2023, { blind: [[10, 30], [90, 100]] })]), 20, 2);
    expect(section.inspections.map((each) => each.finding)).toEqual(['not-indicated', 'not-inspected']);
    expect(section.reason).toMatch(/last seen 2022-06-01, not by the inspection of 2023-06-01/);
  });

  it('counts damage in the part that was seen, though the rest was not', async () => {
    const section = await ask(await rope([scan(2022, { faults: [{ at: 89.5 }] })]), 92, 3);
    expect(section.finding).toBe('indicated');
    expect(section.reason).toMatch(/the rest is NOT INSPECTED/);
    expect(section.inspections[0].faults.map((fault) => fault.position_m)).toEqual([89.5]);
  });

  it('is no-data without an inspection up to the date, and without a usable one', async () => {
    const analysis = await rope([scan(2023)], { unused: [{ id: 'spoiled', date: '2021-01-01' }] });
    expect(await ask(analysis, 20, 2, '2020-01-01')).toMatchObject({ finding: 'no-data', inspections: [] });
    const spoiled = await ask(analysis, 20, 2, '2022-01-01');
    expect(spoiled.finding).toBe('no-data');
    expect(spoiled.inspections).toMatchObject([{ id: 'spoiled', finding: 'no-data', coverage_share: 0, mean_loss_percent: null }]);
  });

  it.each<[string, SurveyParts['notes'], string]>([
    ['broken wires', [{ from: 20, kind: 'broken-wires', value: 2 }], 'indicated'],
    ['a count of no broken wires', [{ from: 20, kind: 'broken-wires', value: 0 }], 'not-indicated'],
    ['corrosion graded none', [{ from: 20, kind: 'corrosion-external', severity: 'none' }], 'not-indicated'],
    ['corrosion with a grade', [{ from: 20, kind: 'corrosion-internal', severity: 'medium' }], 'indicated'],
    ['a diameter', [{ from: 20, kind: 'diameter', value: 29.8, unit: 'mm' }], 'not-indicated'],
    ['broken wires elsewhere', [{ from: 30, kind: 'broken-wires', value: 2 }], 'not-indicated'],
  ])('takes a visual note of %s for what it is', async (_, notes, finding) => {
    expect((await ask(await rope([scan(2022, { notes })]), 20, 2)).finding).toBe(finding);
  });

  it('hears an inspection by eye alone, which covers nothing', async () => {
    const seen = ropeSurvey({ id: 'eye', date: '2024-01-01', noLma: true, noLf: true, blind: [[0, 100]], notes: [{ from: 95, kind: 'broken-wires', value: 1 }] });
    const section = await ask(await rope([scan(2022)], { visual: [seen] }), 95, 1);
    expect(section.finding).toBe('indicated');
    expect(section.inspections[1]).toMatchObject({ id: 'eye', finding: 'indicated', coverage_share: 0 });
    expect(section.reason).toMatch(/no magnetic scan reached this length/);
  });
});

describe('a date', () => {
  it('leaves later inspections out of the answer, of growth and of the criteria, as if they were never made', async () => {
    const years = [2022, 2023, 2024, 2025];
    const asked = await ask(await rope(years.map((year) => scan(year))), 42, 2, '2024-06-01');
    const known = await ask(await rope(years.slice(0, 3).map((year) => scan(year))), 42, 2);
    expect(asked.inspections.map((each) => each.id)).toEqual(['y2022', 'y2023', 'y2024']);
    expect(asked).toEqual(known);
    expect(asked.growth.map((each) => each.state)).toEqual(['new']);
    expect(asked.criteria.every((each) => each.inspection === 'y2024')).toBe(true);
  });
});

describe('criteria at a section', () => {
  it('are each judged in the section, not at the worst place of the rope', async () => {
    const analysis = await rope([scan(2025, { zones: [], loss: (at) => (at >= 40 && at < 46 ? 3 : at >= 60 && at < 61 ? 2 : 0) })]);
    const at = async (place: number) => (await ask(analysis, place, 2)).criteria.find((each) => each.clause === 'area-30d')!;
    expect((await at(43)).value).toBeCloseTo(3, 6);
    expect((await at(60)).value).toBeCloseTo(2, 6);
    expect((await at(60)).from_m).toBeGreaterThan(57.5);
    expect((await at(20)).value).toBe(0);
  });

  it('say nothing of a length that was not inspected', async () => {
    expect((await ask(await rope([scan(2025)]), 95, 3)).criteria).toEqual([]);
  });
});

describe('figures of a section', () => {
  it('gives the loss that is hardest to find in the seen part, and the uncertainty of the position', async () => {
    const [inspection] = (await ask(await rope([scan(2022)]), 50, 5)).inspections;
    expect(inspection.smallest_detectable_loss_percent).toBeCloseTo(0.2 + 0.55, 1);
    expect(inspection.texture_ratio).toBeCloseTo(1.2, 9);
    expect(inspection.position_uncertainty_m).toBeCloseTo(0.04, 9);
  });

  it('ranks the mean loss among all equally long lengths, as a slow search does', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: -1, max: 5, noNaN: true }), { minLength: 30, maxLength: 80 }), fc.nat(60), fc.integer({ min: 1, max: 8 }), (losses, first, span) => {
      const step = 0.5;
      const n = losses.length;
      const valid = losses.map((_, i) => (i * 7) % 11 !== 3);
      const survey = ropeSurvey({ step, length: n * step, loss: (x) => losses[Math.floor(x / step)], blind: valid.flatMap((ok, i): [number, number][] => (ok ? [] : [[i * step, (i + 1) * step]])) });
      const from = first % (n - span);
      const section = sectionLength({ at: (from + span / 2) * step, halfWidth: (span * step) / 2 }, null);
      const mean = (at: number): number | null => {
        const seen = losses.slice(at, at + span).filter((_, k) => valid[at + k]);
        return seen.length === 0 ? null : seen.reduce((a, b) => a + b, 0) / seen.length;
      };
      const own = mean(from);
      const found = rankOfLoss(survey, section);
      if (own === null) {
        expect(found).toBeNull();
        return;
      }
      const others = Array.from({ length: n - span + 1 }, (_, at) => at).filter((at) => valid.slice(at, at + span).filter(Boolean).length >= 0.5 * span).map((at) => mean(at)!);
      expect(found!.mean).toBeCloseTo(own, 9);
      const below = others.filter((each) => each < own - 1e-9).length;
      const notAbove = others.filter((each) => each <= own + 1e-9).length;
      expect(found!.percentile).toBeGreaterThanOrEqual((100 * below) / others.length - 1e-9);
      expect(found!.percentile).toBeLessThanOrEqual((100 * notAbove) / others.length + 1e-9);
    }), { numRuns: 200 });
  });
});

describe('a section over the seam of a loop', () => {
  it('is the same from either side, and sees what lies on both', async () => {
    const made = ropeSurvey({ id: 'loop', faults: [{ at: 99.5 }, { at: 0.7 }], loss: (at) => (at < 2 || at >= 98 ? 2 : 0) });
    const analysis = await analysisOf({ surveys: [made], length: 100, loop: true });
    for (const at of [0, 100, -100]) {
      const section = await ask(analysis, at, 2);
      expect(section.inspections[0].faults.map((fault) => fault.position_m)).toEqual([99.5, 0.7]);
      expect(section.inspections[0]).toMatchObject({ finding: 'indicated', coverage_share: 1 });
      expect(section.inspections[0].mean_loss_percent).toBeCloseTo(2, 6);
    }
  });
});
