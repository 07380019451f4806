import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goCompare: Command = {
  name: 'go-compare',
  title: 'Go to Compare',
  group: 'Screens',
  keys: ['5'],
  enabled: hasRope,
  run: () => change({ screen: 'compare' }),
  undo: 'nothing',
};
