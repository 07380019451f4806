import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const goIntake: Command = {
  name: 'go-intake',
  title: 'Go to Intake',
  group: 'Screens',
  keys: ['7'],
  enabled: hasRope,
  run: () => change({ screen: 'intake' }),
  undo: 'nothing',
};
