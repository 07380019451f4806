import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const formerView: Command = {
  name: 'former-view',
  title: 'Back to the former view',
  group: 'Strips',
  keys: ['Backspace'],
  enabled: (state) => state.windowHistory.length > 0,
  run: ({ windowHistory }) => {
    const last = windowHistory.at(-1);
    if (last) change({ window: last, windowHistory: windowHistory.slice(0, -1) });
  },
  undo: 'view',
};
