import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const showCommands: Command = {
  name: 'show-commands',
  title: 'Find a command',
  group: 'Window',
  keys: ['Ctrl+K'],
  enabled: () => true,
  run: () => change({ dialog: 'commands' }),
  undo: 'nothing',
};
