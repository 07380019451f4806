import { describe, expect, it } from 'vitest';
import { distinctPlaces } from '../../analysis/life/candidate-places.ts';
import type { MeasuredWindow } from '../../analysis/life/candidate-places.ts';
import { nextInspection, summarise } from '../../analysis/life/index.ts';
import { ropePosition } from '../../analysis/rope/units.ts';
import { bareEvidence, boundedPlace } from '../support/life-parts.ts';

const asOf = '2024-05-01';
const options = { sets: [], asOf, intervalFactor: 0.5 };

describe('the next inspection', () => {
  it('is due at half of the time to the earliest low bound of all places', () => {
    const found = nextInspection(bareEvidence(asOf), [], [boundedPlace('2034-05-01', asOf), boundedPlace('2028-05-01', asOf)], options);
    expect(found.by).toBe('2026-05-01');
    expect(nextInspection(bareEvidence(asOf), [], [boundedPlace('2028-05-01', asOf)], { ...options, intervalFactor: 0.25 }).by).toBe('2025-05-01');
  });

  it('is never before the newest inspection, and says at once where the bound has come already', () => {
    const found = nextInspection(bareEvidence(asOf), [], [boundedPlace('2021-01-01', asOf)], options);
    expect(found.by).toBe(asOf);
    expect(found.reasons[0]).toMatch(/^at once/);
  });

  it('has no date and says at once where no inspection could be used', () => {
    const found = nextInspection(bareEvidence(), [], [], options);
    expect(found.by).toBeNull();
    expect(found.reasons).toEqual([expect.stringMatching(/^at once/)]);
    const summary = summarise(bareEvidence(), { results: [], notEvaluated: [] }, { forecasts: [], nextInspection: found }, []);
    expect(summary.next_inspection_by).toBeNull();
    expect(summary.reasons.join(' ')).toContain('at once');
    expect(summary.advice).toContain('whole rope');
  });

  it('says which further inspection would help where growth cannot be judged yet', () => {
    const found = nextInspection(bareEvidence(asOf), [], [], options);
    expect(found.by).toBeNull();
    expect(found.advice).toContain('second inspection of the same lengths');
    expect(summarise(bareEvidence(asOf), { results: [], notEvaluated: [] }, { forecasts: [], nextInspection: found }, []).advice).toBe(found.advice);
  });
});

describe('places worth a forecast of their own', () => {
  const span = (from: number, to: number) => ({ from: ropePosition(from), to: ropePosition(to) });
  const window = (from: number, to: number): MeasuredWindow => ({ where: span(from, to), series: [] });

  it('are the governing one and at most two more, none side by side', () => {
    expect(distinctPlaces([window(10, 12), window(13, 15), window(20, 22), window(30, 32), window(40, 42)], [])).toEqual([0, 2, 3]);
  });

  it('are one for each zone, however many windows stand on it', () => {
    expect(distinctPlaces([window(10, 11), window(14, 15), window(18, 19), window(50, 51)], [span(5, 25)])).toEqual([0, 3]);
  });
});
