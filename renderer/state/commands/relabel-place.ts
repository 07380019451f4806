import { hasPlace } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const relabelPlace: Command = {
  name: 'relabel-place',
  title: 'Relabel this place',
  group: 'Places',
  keys: ['l'],
  enabled: hasPlace,
  run: () => change({ dialog: 'review', review: 'relabelled' }),
  undo: 'journal',
};
