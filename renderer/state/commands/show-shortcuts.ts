import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const showShortcuts: Command = {
  name: 'show-shortcuts',
  title: 'Show all keys',
  group: 'Window',
  keys: ['?'],
  enabled: () => true,
  run: () => change({ dialog: 'shortcuts' }),
  undo: 'nothing',
};
