import type { Clause, RuleSetData } from '../rule-set.ts';

const outer = (id: string, metres: number, percent: number): Clause => ({
  id, measure: 'broken-wires', window: { length: metres, unit: 'm' }, limit: { kind: 'share-of-wires', percent, of: 'outer-wires' }, comparator: '>', unit: 'wires',
  provenance: 'published', needs: 'broken outer wires by place, number of outer wires',
  sentence: `More than ${percent} % of the outer wires broken within ${metres} m.`, source: 'Carinthia LGBl 2/1971, section 30',
});

export const carinthia1971TrackAndHaul: RuleSetData = {
  id: 'carinthia-1971-track-and-haul',
  title: 'Forest ropeways, Carinthia: broken outer wires of track and haul ropes',
  edition: 'LGBl 2/1971',
  scope: { text: 'Track and haul ropes of forest ropeways.', duties: ['forest-ropeway'], proposedFor: ['forest-ropeway'] },
  clauses: [outer('outer-wires-1m', 1, 10), outer('outer-wires-10m', 10, 25)],
};

export const carinthia1971Tension: RuleSetData = {
  id: 'carinthia-1971-tension',
  title: 'Forest ropeways, Carinthia: broken outer wires of tension ropes',
  edition: 'LGBl 2/1971',
  scope: { text: 'Tension ropes of forest ropeways.', duties: ['forest-ropeway'] },
  clauses: [outer('outer-wires-1m', 1, 25)],
};
