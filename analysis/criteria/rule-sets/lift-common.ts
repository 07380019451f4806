import type { Clause } from '../rule-set.ts';
import { brokenInLay, brokenInStrand, inValley, thinner } from './words.ts';

/** Counts per lay at which a lift rope is to be replaced or watched, and scrapped. */
interface LiftCounts {
  readonly spread: readonly [number, number];
  readonly concentrated: readonly [number, number];
}

const given = { provenance: 'published' as const, source: 'ISO 4344:2004 / EN 12385-5, table as reprinted' };

export function liftClauses({ spread, concentrated }: LiftCounts): Clause[] {
  const watch = { ...given, consequence: 'watch' as const };
  const sideBySide = (id: string, comparator: Clause['comparator'], more: Partial<Clause>): Clause => ({
    id, measure: 'broken-wires-side-by-side', window: { length: 1, unit: 'lay' }, limit: { kind: 'number', value: 4 }, comparator, unit: 'wires',
    needs: 'broken wires counted side by side in one strand', sentence: 'Broken wires side by side in one strand within one lay.', ...given, ...more,
  });
  return [
    brokenInLay('spread-watch', spread[0], '>', { ...watch, sentence: 'Broken wires spread over all strands within one lay: replace, or watch closely.' }),
    brokenInLay('spread-scrap', spread[1], '>', { ...given, sentence: 'Broken wires spread over all strands within one lay: scrap.' }),
    brokenInStrand('concentrated-watch', concentrated[0], '>', { ...watch, sentence: 'Broken wires concentrated in one or two strands within one lay: replace, or watch closely.' }),
    brokenInStrand('concentrated-scrap', concentrated[1], '>', { ...given, sentence: 'Broken wires concentrated in one or two strands within one lay: scrap.' }),
    sideBySide('adjacent-watch', '>=', { consequence: 'watch' }),
    sideBySide('adjacent-scrap', '>', {}),
    inValley(1, '>=', { ...watch, id: 'valley-watch' }),
    inValley(1, '>', { ...given, id: 'valley-scrap' }),
    thinner('diameter', 6, '>', 'nominal', { ...given, provenance: 'disputed', source: `${given.source}; a national lift code says below 90 % of nominal` }),
  ];
}
