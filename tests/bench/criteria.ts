import { chooseRuleSets } from '../../analysis/criteria/choose-rule-sets.ts';
import { evaluateCriteria, findClause, measureOver } from '../../analysis/criteria/evaluate-criteria.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { evidenceOf, surveyOf } from '../criteria/rope-for-tests.ts';

/** Time of the criteria over a long rope with many inspections; reports, asserts nothing. Arguments: samples, inspections. */
export async function run(args: string[]): Promise<void> {
  const samples = Number(args[0] ?? 1_000_000);
  const inspections = Number(args[1] ?? 8);
  const length = samples * 0.005;
  const faults = Array.from({ length: 400 }, (_, i) => ({ at: ((i * 7919.3) % length) }));
  const surveys = Array.from({ length: inspections }, (_, year) => surveyOf({
    id: `i${year}`, date: `20${10 + year}-05-01`, length, step: 0.005, faults, blind: [[0, 2], [length / 2, length / 2 + 5]],
    loss: (x) => 0.5 + 0.1 * Math.sin(x * 17) + (x > 1000 && x < 1020 ? year : 0), notes: [{ kind: 'diameter', from: 12, value: 31.4, unit: 'mm' }],
  }));
  for (const application of ['funicular haul rope', 'mine hoist rope', 'crane hoist rope']) {
    const evidence = evidenceOf({ construction: '6x36WS-IWRC', diameter_mm: 32, lay: 'ordinary', length_m: length, application }, surveys);
    const { sets } = chooseRuleSets(application, evidence.geometry, undefined, []);
    const from = performance.now();
    const outcome = await evaluateCriteria(evidence, sets, noCheckpoint);
    const evaluated = performance.now();
    let points = 0;
    for (const result of outcome.results) {
      const clause = findClause(sets, result.ruleSet, result.clause)!;
      for (const survey of surveys) if (measureOver(clause, evidence, survey, result.where)) points += 1;
    }
    const measured = performance.now();
    console.log(`${application}: ${samples} positions x ${inspections} inspections, ${outcome.results.length} clauses judged in ${(evaluated - from).toFixed(0)} ms; ${points} series points in ${(measured - evaluated).toFixed(0)} ms`);
  }
  // Every inspection judged in full, as a history of the criteria would need it.
  const evidence = evidenceOf({ construction: '6x36WS-IWRC', diameter_mm: 32, lay: 'ordinary', length_m: length, application: 'funicular' }, surveys);
  const { sets } = chooseRuleSets('funicular', evidence.geometry, undefined, []);
  const from = performance.now();
  for (const survey of surveys) await evaluateCriteria({ ...evidence, surveys: [survey] }, sets, noCheckpoint);
  console.log(`funicular, all ${inspections} inspections judged in full: ${(performance.now() - from).toFixed(0)} ms`);
}
