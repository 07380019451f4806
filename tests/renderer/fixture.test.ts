import { expect, it } from 'vitest';
import { analysisForTests } from './rope-fixture.ts';
import { viewOf } from '../../renderer/workers/analysis-view.ts';
it('x', async () => {
  const a = await analysisForTests();
  const v = viewOf(a);
  console.log(a.places.map((p) => [p.id, p.subject, p.state, p.where, p.reason]), a.criteria.results.map((r) => [r.clause, r.verdict, r.utilisation]), a.life.forecasts.length, a.assessment.summary, a.assessment.not_inspected);
  structuredClone(v);
  expect(v.inspections).toHaveLength(4);
});
