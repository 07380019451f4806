import type { Command } from '../command.ts';
import { openEntry } from '../open-rope.ts';
import { change } from '../store.ts';

export const openFolder: Command = {
  name: 'open-folder',
  title: 'Open a rope folder',
  group: 'Rope folder',
  keys: ['Ctrl+O'],
  enabled: (state) => state.host?.hasShell === true,
  run: async ({ host, shell }) => {
    if (host === null) return;
    if (shell?.nativeDialogs !== true) {
      change({ dialog: 'browse' });
      return;
    }
    const chosen = await host.call('chooseFolder', {});
    if (chosen !== null) await openEntry(chosen);
  },
  undo: 'nothing',
};
