import type { Assessment } from '../assessment/schema.ts';
import type { Block } from './document.ts';
import { figure, metres, percent, provenanceWords, span, verdictWords } from './phrase.ts';

const text = (title: string) => ({ title, numeric: false });
const number = (title: string) => ({ title, numeric: true });

export function criteriaBlocks(assessment: Assessment): Block[] {
  const ordered = [...assessment.criteria].sort((a, b) => b.utilisation - a.utilisation);
  return [
    { kind: 'heading', text: 'Discard criteria' },
    { kind: 'table', caption: 'Rule sets applied: the competent person confirms that they are the ones in force', whenEmpty: 'No rule set fits what the record says of duty and make: nothing was judged.',
      columns: [text('Rule set'), text('Edition'), text('Why it was chosen')], rows: assessment.rule_sets.map((each) => [each.title, each.edition, each.reason]) },
    { kind: 'table', caption: 'Every criterion that can be evaluated, at its worst place', whenEmpty: 'No criterion could be evaluated.',
      columns: [text('Rule set, clause'), number('Window [m]'), number('Rope position [m]'), number('Value'), number('Limit'), number('Share of limit'), text('Verdict'), text('Limit is')],
      rows: ordered.map((each) => [
        `${each.rule_set}, ${each.clause}`, each.window_m === null ? '–' : metres(each.window_m), span(each.from_m, each.to_m),
        `${figure(each.value)}${each.value_uncertainty === null ? '' : ` ± ${figure(each.value_uncertainty)}`} ${each.unit}`, `${each.comparator} ${figure(each.limit)} ${each.unit}`, percent(each.utilisation), verdictWords(each.verdict), provenanceWords(each.provenance),
      ]),
      below: ordered.map((each) => (each.note === '' ? each.sentence : `${each.sentence} (${each.note})`)) },
    { kind: 'table', caption: 'Criteria that could NOT be evaluated', whenEmpty: 'None.', columns: [text('Rule set, clause'), text('What it needs')],
      rows: assessment.criteria_not_evaluated.map((each) => [`${each.rule_set}, ${each.clause}`, each.needs]) },
  ];
}

export function lifeBlocks(assessment: Assessment): Block[] {
  return [
    { kind: 'heading', text: 'Remaining life' },
    { kind: 'paragraph', tone: 'caution', text: 'A forecast extends few points into the future. The interval from 10 to 90 % is part of the answer; the middle alone is none.' },
    ...(assessment.summary.advice === '' ? [] : [{ kind: 'paragraph', tone: 'plain', text: `What would change the answer: ${assessment.summary.advice}` } as const]),
    { kind: 'table', caption: 'When a criterion would be reached', whenEmpty: 'No forecast could be made.',
      columns: [text('Rule set, clause'), number('Rope position [m]'), number('10 %'), number('50 %'), number('90 %'), text('Model'), number('Inspections')],
      rows: assessment.life.map((each) => [`${each.rule_set}, ${each.clause}`, span(each.from_m, each.to_m), ...passage(each), each.model, String(each.inspections_used)]),
      below: assessment.life.map((each) => (each.not_before === null ? each.reason : `${each.reason} Not before ${each.not_before} (90 %).`)) },
  ];
}

function passage(each: Assessment['life'][number]): string[] {
  const trips = [each.trips_low, each.trips_median, each.trips_high];
  return [each.date_low, each.date_median, each.date_high].map((date, i) => {
    const said = [date, trips[i] === null ? null : `${Math.round(trips[i])} trips`].filter((part) => part !== null);
    return said.length > 0 ? said.join(', ') : 'refused';
  });
}
