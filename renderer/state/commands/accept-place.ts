import { hasPlace } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const acceptPlace: Command = {
  name: 'accept-place',
  title: 'Accept this place',
  group: 'Places',
  keys: ['a'],
  enabled: hasPlace,
  run: () => change({ dialog: 'review', review: 'accepted' }),
  undo: 'journal',
};
