import type { Command } from '../command.ts';
import { stopAnalysis } from '../analyse.ts';

export const stopWork: Command = {
  name: 'stop-work',
  title: 'Stop the work under way',
  group: 'Rope folder',
  keys: ['Escape'],
  enabled: (state) => state.working !== null && !state.working.cancelling,
  run: () => stopAnalysis(),
  undo: 'nothing',
};
