import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goReport: Command = {
  name: 'go-report',
  title: 'Go to Report',
  group: 'Screens',
  keys: ['8'],
  enabled: hasRope,
  run: () => change({ screen: 'report' }),
  undo: 'nothing',
};
