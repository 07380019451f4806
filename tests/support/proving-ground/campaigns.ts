import type { Tally } from './figures.ts';
import type { Profile } from './rope-world.ts';
import type { Trial } from './run-world.ts';
import { scoreAlignment } from './score-alignment.ts';
import { scoreFaults, scoreZones } from './score-condition.ts';
import { scoreGrowth } from './score-growth.ts';
import { scoreLife } from './score-life.ts';

export interface Campaign {
  readonly profile: Profile;
  readonly firstSeed: number;
  score(trial: Trial, tally: Tally): void;
}

const common: Omit<Profile, 'name' | 'damage' | 'inspections'> = { length: [200, 500], character: 'ordinary', loops: 0.2, travel: 'hard', gains: true, steps: [0.002, 0.005, 0.005, 0.01, 0.02] };
const life: Omit<Profile, 'name' | 'gains'> = { ...common, damage: 'life', inspections: [2, 8], length: [150, 260], travel: 'easy', loops: 0, steps: [0.01] };

/** Each campaign has its own ropes; seeds never overlap, and none is used to set any parameter of the program. */
export const CAMPAIGNS: readonly Campaign[] = [
  {
    profile: { ...common, name: 'condition', damage: 'zones-and-faults', inspections: [1, 1], gains: false, character: 'any', travel: 'easy', loops: 0.1, length: [200, 900] }, firstSeed: 1000,
    score: (trial, tally) => { scoreFaults(trial, tally); scoreZones(trial, tally); },
  },
  { profile: { ...common, name: 'sound', damage: 'none', inspections: [1, 1], gains: false, character: 'any', travel: 'easy', loops: 0.1, length: [200, 900] }, firstSeed: 2000, score: (trial, tally) => { scoreFaults(trial, tally); scoreZones(trial, tally); } },
  { profile: { ...common, name: 'alignment', damage: 'growing', inspections: [2, 4] }, firstSeed: 3000, score: (trial, tally) => scoreAlignment(trial, tally, 'align') },
  { profile: { ...common, name: 'featureless', damage: 'none', inspections: [2, 3], character: 'featureless' }, firstSeed: 4000, score: (trial, tally) => scoreAlignment(trial, tally, 'featureless') },
  { profile: { ...common, name: 'growth', damage: 'growing', inspections: [2, 6], steps: [0.005, 0.005, 0.01] }, firstSeed: 5000, score: (trial, tally) => scoreGrowth(trial, tally, 'growth') },
  { profile: { ...common, name: 'gain and zero only', damage: 'none', inspections: [2, 5], steps: [0.005, 0.01] }, firstSeed: 6000, score: (trial, tally) => scoreGrowth(trial, tally, 'gain only') },
  { profile: { ...common, name: 'gain and zero only, damaged', damage: 'zones-and-faults', inspections: [2, 4], steps: [0.005, 0.01] }, firstSeed: 7000, score: (trial, tally) => scoreGrowth(trial, tally, 'unchanged') },
  { profile: { ...life, name: 'life', gains: false }, firstSeed: 8000, score: (trial, tally) => scoreLife(trial, tally, 'life') },
  { profile: { ...life, name: 'life under gains', gains: true }, firstSeed: 9000, score: (trial, tally) => scoreLife(trial, tally, 'life under gains') },
];
