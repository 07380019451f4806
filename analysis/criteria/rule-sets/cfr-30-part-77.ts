import { retirementSet } from './cfr-30-retirement.ts';

export const cfr30Part77 = retirementSet({
  part: 77, retirement: '77.1434', attachment: '77.1437', examination: '77.1433',
  text: 'Ropes that hoist persons at surface coal mines and shafts.', duties: ['coal-mine-hoist'], proposedFor: [],
});
