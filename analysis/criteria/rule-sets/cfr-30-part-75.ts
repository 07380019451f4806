import { retirementSet } from './cfr-30-retirement.ts';

export const cfr30Part75 = retirementSet({
  part: 75, retirement: '75.1434', attachment: '75.1437', examination: '75.1433',
  text: 'Ropes that hoist persons in underground coal mines.', duties: ['coal-mine-hoist'], proposedFor: ['coal-mine-hoist'],
});
