import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const addNote: Command = {
  name: 'add-note',
  title: 'Add a visual note',
  group: 'Places',
  keys: ['m'],
  enabled: hasRope,
  run: () => change({ dialog: 'note' }),
  undo: 'nothing',
};
