import type { Clause, Duty, RuleSetData } from '../rule-set.ts';
import { atTermination, badAttachment, brokenInLay, brokenInStrand, distorted, heated, inValley, markedCorrosion, thinner, thinnerWires } from './words.ts';

interface Part { readonly part: 56 | 57 | 75 | 77; readonly retirement: string; readonly attachment: string; readonly examination: string; readonly text: string; readonly duties: Duty[]; readonly proposedFor: Duty[] }

/** The retirement criteria of the four parts are worded the same; each part is a set of its own, so that the section is cited that applies. */
export function retirementSet(part: Part): RuleSetData {
  const source = `30 CFR ${part.retirement}`;
  const given = { provenance: 'published' as const, source };
  return {
    id: `cfr-30-part-${part.part}`,
    title: `Mine hoist ropes: retirement and re-termination, 30 CFR part ${part.part}`,
    edition: `30 CFR ${part.retirement}, ${part.attachment}, ${part.examination}`,
    scope: { text: part.text, duties: part.duties, proposedFor: part.proposedFor },
    clauses: [...retirement(given), ...attachment({ provenance: 'published', source: `30 CFR ${part.attachment}` })],
    intervals: [{
      id: 'six-months', months: 6, when: {}, provenance: 'published', source: `30 CFR ${part.examination}`,
      sentence: 'A nondestructive test of the active length, or diameter measurements at the listed places, every six months; a visual examination every 14 calendar days besides.',
    }],
  };
}

type Given = Pick<Clause, 'provenance' | 'source'>;

function retirement(given: Given): Clause[] {
  return [
    brokenInLay('a-total', 5, '>', { ...given, source: `${given.source}(a)`, limit: { kind: 'share-of-wires', percent: 5, of: 'rope' }, sentence: 'More than 5 % of all wires, fillers excluded, broken within one lay.' }),
    brokenInStrand('a-strand', 15, '>', { ...given, source: `${given.source}(a)`, limit: { kind: 'share-of-wires', percent: 15, of: 'strand' }, sentence: 'More than 15 % of the wires of one strand broken within one lay.' }),
    inValley(1, '>', { ...given, source: `${given.source}(b)`, id: 'b-valley', ropes: { lay: 'ordinary' } }),
    { ...thinnerWires(100 / 3, '>', { ...given, source: `${given.source}(c)` }), id: 'c-outer-wires' },
    { ...markedCorrosion({ ...given, source: `${given.source}(d)` }), id: 'd-corrosion' },
    { ...distorted({ ...given, source: `${given.source}(e)` }), id: 'e-distortion' },
    { ...heated({ ...given, source: `${given.source}(f)` }), id: 'f-heat' },
    thinner('g-diameter', 6, '>', 'baseline', { ...given, source: `${given.source}(g)` }),
    {
      id: 'h-strength', measure: 'strength-loss', window: null, limit: { kind: 'number', value: 10 }, comparator: '>', unit: '%', needs: 'LMA trace and broken wires',
      sentence: 'Loss of more than 10 % of rope strength as found by nondestructive testing; estimated here from the loss of metallic area.', ...given, source: `${given.source}(h)`,
    },
  ];
}

function attachment(given: Given): Clause[] {
  return [
    atTermination(1, '>', { ...given, id: 'attachment-broken-wires', consequence: 're-terminate' }),
    { ...badAttachment({ ...given, consequence: 're-terminate' }), id: 'attachment-condition' },
  ];
}
