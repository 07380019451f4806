import type { Command } from '../command.ts';
import { analyse } from '../analyse.ts';

export const analyseAgain: Command = {
  name: 'analyse-again',
  title: 'Read the folder again',
  group: 'Rope folder',
  keys: ['Ctrl+Shift+R'],
  enabled: (state) => state.rope !== null && state.working === null,
  run: async () => { await analyse('Reading again'); },
  undo: 'nothing',
};
