import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goCriteria: Command = {
  name: 'go-criteria',
  title: 'Go to Criteria',
  group: 'Screens',
  keys: ['3'],
  enabled: hasRope,
  run: () => change({ screen: 'criteria' }),
  undo: 'nothing',
};
