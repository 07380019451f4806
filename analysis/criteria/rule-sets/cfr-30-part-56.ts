import { retirementSet } from './cfr-30-retirement.ts';

export const cfr30Part56 = retirementSet({
  part: 56, retirement: '56.19024', attachment: '56.19025', examination: '56.19023',
  text: 'Ropes that hoist persons or loads at surface metal and nonmetal mines.', duties: ['mine-hoist'], proposedFor: [],
});
