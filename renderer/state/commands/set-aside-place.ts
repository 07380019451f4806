import { hasPlace } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const setAsidePlace: Command = {
  name: 'set-aside-place',
  title: 'Set this place aside',
  group: 'Places',
  keys: ['s'],
  enabled: hasPlace,
  run: () => change({ dialog: 'review', review: 'set-aside' }),
  undo: 'journal',
};
