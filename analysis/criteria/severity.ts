/** Severity ratings of ISO 4309: percent towards discard. The definitions are published, the bands are from memory. */
export type SeverityCore = 'fibre' | 'steel' | 'rotation-resistant';

/** Lower bounds (percent decrease) of the bands rated 20, 40, 60, 80 and 100 % [from memory]. */
export const DIAMETER_BANDS: Readonly<Record<SeverityCore, readonly [number, number, number, number, number]>> = {
  fibre: [6, 7, 8, 9, 10],
  steel: [3.5, 4.5, 5.5, 6.5, 7.5],
  'rotation-resistant': [1, 2, 3, 4, 5],
};

export const SEVERITY_WORDS = ['none', 'slight', 'medium', 'high', 'very high', 'discard'] as const;

// A diameter is read to 0.01 mm at best: a band edge worked out in floating point belongs to the band above.
const EDGE = 1e-9;

/** Uniform decrease in percent of nominal: 100 (dref - dm) / d. Reference, measured and nominal diameters in one unit. */
export function uniformDecrease(reference: number, measured: number, nominal: number): number {
  return (100 * (reference - measured)) / nominal;
}

/** Severity in percent (0, 20, 40, 60, 80, 100) of a uniform decrease in percent. */
export function diameterSeverity(decreasePercent: number, core: SeverityCore): number {
  const reached = DIAMETER_BANDS[core].filter((bound) => decreasePercent >= bound - EDGE).length;
  return reached * 20;
}

export function severityWord(percent: number): (typeof SEVERITY_WORDS)[number] {
  return SEVERITY_WORDS[Math.min(5, Math.max(0, Math.floor(percent / 20 + EDGE)))];
}

/** Broken wires rated as percent of their limit. */
export function brokenWireSeverity(count: number, limit: number): number {
  return (100 * count) / limit;
}

export interface CombinedSeverity {
  readonly sum: number;
  readonly discard: boolean;
  readonly word: (typeof SEVERITY_WORDS)[number];
}

/** Sum of the severities found at the same position; discard from 100 % [from memory]. */
export function combinedSeverity(ratings: readonly number[]): CombinedSeverity {
  const sum = ratings.reduce((total, each) => total + each, 0);
  return { sum, discard: sum >= 100 - EDGE, word: severityWord(sum) };
}

const GRADES: readonly (readonly [RegExp, number])[] = [
  [/^(none|no|nil|0|superficial|surface|wipes? clean)\b/i, 0],
  [/^(very high|very severe|very heavy)/i, 80],
  [/^(discard|heavily pitted|heavy pitting|slack wires?|debris)/i, 100],
  [/^(slight|light|minor|low)/i, 20],
  [/^(medium|moderate)/i, 40],
  [/^(high|rough|severe|heavy|marked|strong|significant|pitted)/i, 60],
];

/**
 * A grade written in words or as a percentage, as severity in percent. Null where it is not understood: an unknown word is never 0.
 * Superficial 0, rough to the touch (high) 60, heavily pitted with slack wires 100 [from memory]; the grades between by their word.
 */
export function severityOfGrade(grade: string, value: number | null = null, unit = ''): number | null {
  const text = grade.trim();
  const percent = /^(\d+(?:\.\d+)?)\s*%?$/.exec(text);
  if (percent && Number(percent[1]) <= 100) return Number(percent[1]);
  const named = GRADES.find(([pattern]) => pattern.test(text));
  if (named) return named[1];
  if (text === '' && value !== null && unit.trim() === '%' && value >= 0 && value <= 100) return value;
  return null;
}
