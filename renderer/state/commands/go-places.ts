import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goPlaces: Command = {
  name: 'go-places',
  title: 'Go to Places',
  group: 'Screens',
  keys: ['2'],
  enabled: hasRope,
  run: () => change({ screen: 'places' }),
  undo: 'nothing',
};
