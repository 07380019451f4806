import { retirementSet } from './cfr-30-retirement.ts';

export const cfr30Part57 = retirementSet({
  part: 57, retirement: '57.19024', attachment: '57.19025', examination: '57.19023',
  text: 'Ropes that hoist persons or loads in underground metal and nonmetal mines.', duties: ['mine-hoist', 'mine-guide'], proposedFor: ['mine-hoist'],
});
