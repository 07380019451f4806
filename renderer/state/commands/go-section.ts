import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goSection: Command = {
  name: 'go-section',
  title: 'Go to Section',
  group: 'Screens',
  keys: ['6'],
  enabled: hasRope,
  run: () => change({ screen: 'section' }),
  undo: 'nothing',
};
