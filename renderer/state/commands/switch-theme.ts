import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const switchTheme: Command = {
  name: 'switch-theme',
  title: 'Switch between light and dark',
  group: 'Window',
  keys: ['Ctrl+Shift+D'],
  enabled: () => true,
  run: ({ theme }) => change({ theme: theme === 'light' ? 'dark' : 'light' }),
  undo: 'nothing',
};
