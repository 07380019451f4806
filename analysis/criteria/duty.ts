import type { Duty } from './rule-set.ts';

/** A duty read out of the free text of a record, and the word that told. */
export interface ReadDuty {
  readonly duty: Duty;
  readonly word: string;
}

/** First match decides, so the more particular word stands before the more general one. */
const WORDS: readonly (readonly [RegExp, Duty])[] = [
  [/forest|logging|timber|holzbring/, 'forest-ropeway'],
  [/surface lift|drag lift|ski ?tow|ski lift|t-bar|platter|schlepplift/, 'surface-lift'],
  [/funicular|inclined (lift|elevator|railway|plane|hoist)|cable railway|standseilbahn|schrägaufzug|funicolare|funiculaire/, 'funicular'],
  [/(tension|counterweight|spannseil).*(ropeway|cableway|gondola|chair|aerial|tramway|rope)|(ropeway|cableway|gondola|chair ?lift|aerial|tramway).*(tension|counterweight)|spannseil/, 'ropeway-tension'],
  [/(ropeway|cableway|aerial|tramway|cable car|gondola).*(track|carrying (rope|cable))|track rope|track cable|tragseil/, 'ropeway-track'],
  [/gondola|chair ?lift|ropeway|cableway|aerial|tramway|cable car|carrying[- ]hauling|funitel|seilbahn|téléphérique|telecabin|haul(ing|age)? rope|zugseil/, 'ropeway-haul'],
  [/coal/, 'coal-mine-hoist'],
  [/guide rope|rubbing rope/, 'mine-guide'],
  [/mine|mining|shaft|winder|winding|koepe|pit\b/, 'mine-hoist'],
  [/scaffold|suspended access|facade|façade/, 'scaffold-hoist'],
  [/sling/, 'sling'],
  [/(crane|derrick|boom).*(standing|pendant|guy|stay)|(standing|pendant|guy|stay).*(crane|derrick|boom)|pendant|boom stay/, 'crane-standing'],
  [/crane|derrick|hoist|winch/, 'crane'],
  [/elevator|lift|aufzug|ascenseur|ascensore/, 'lift'],
];

/** The duty that the words of `application` name; 'unknown' where none does. */
export function readDuty(application: string): ReadDuty {
  const text = application.toLowerCase();
  for (const [pattern, duty] of WORDS) {
    const found = pattern.exec(text);
    if (found) return { duty, word: found[0] };
  }
  return { duty: 'unknown', word: '' };
}

export const DUTY_NAMES: Readonly<Record<Duty, string>> = {
  funicular: 'funicular rope', 'ropeway-haul': 'haul or carrying-hauling rope of a ropeway', 'ropeway-track': 'track rope of a ropeway', 'ropeway-tension': 'tension rope of a ropeway',
  'surface-lift': 'haul rope of a surface lift', 'forest-ropeway': 'rope of a forest ropeway', 'mine-hoist': 'mine hoist rope', 'mine-guide': 'guide or rubbing rope of a shaft',
  'coal-mine-hoist': 'coal mine hoist rope', crane: 'running rope of a crane or hoist', 'crane-standing': 'standing rope of a crane', lift: 'lift rope', 'scaffold-hoist': 'rope of a scaffold hoist',
  sling: 'sling', unknown: 'rope of unstated duty',
};
