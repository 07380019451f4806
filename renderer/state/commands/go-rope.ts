import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goRope: Command = {
  name: 'go-rope',
  title: 'Go to Rope',
  group: 'Screens',
  keys: ['1'],
  enabled: hasRope,
  run: () => change({ screen: 'rope' }),
  undo: 'nothing',
};
