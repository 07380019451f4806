import { expect, it } from 'vitest';
import { emptyScore, INSPECTIONS, scoreRope } from '../bench/life-coverage.ts';
import { KINDS, simulateRope } from '../support/growing-ropes.ts';

/**
 * A short form of the campaign (tests/bench/life-coverage.ts, 400 ropes and more): SYNTHETIC ropes of every law. Bounds are wider than
 * the 0.75 to 0.88 asked of the campaign by what chance does to about a hundred places that hang together in fifty ropes.
 */
it('holds the true date of most places inside the 80 % interval, and errs less than a straight line per place', () => {
  const all = emptyScore();
  INSPECTIONS.forEach((inspections) => KINDS.filter((_, k) => k % 2 === 0).forEach((kind) => scoreRope(simulateRope(7, inspections, kind), 1, [all])));
  const middle = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1];
  expect(all.dated).toBeGreaterThan(60);
  expect(all.inside / all.dated).toBeGreaterThan(0.66);
  expect(all.inside / all.dated).toBeLessThan(0.96);
  expect(middle(all.errors)).toBeLessThan(middle(all.lineErrors));
}, 120_000);
