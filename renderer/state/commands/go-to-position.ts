import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goToPosition: Command = {
  name: 'go-to-position',
  title: 'Go to a position',
  group: 'Strips',
  keys: ['g'],
  enabled: hasRope,
  run: () => change({ dialog: 'go-to' }),
  undo: 'view',
};
