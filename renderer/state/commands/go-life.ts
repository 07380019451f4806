import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goLife: Command = {
  name: 'go-life',
  title: 'Go to Life',
  group: 'Screens',
  keys: ['4'],
  enabled: hasRope,
  run: () => change({ screen: 'life' }),
  undo: 'nothing',
};
