import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const chooseRules: Command = {
  name: 'choose-rules',
  title: 'Confirm or change rule sets',
  group: 'Rope folder',
  keys: [],
  enabled: hasRope,
  run: () => change({ dialog: 'rules' }),
  undo: 'journal',
};
