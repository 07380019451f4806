import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const showParameters: Command = {
  name: 'show-parameters',
  title: 'Parameters of the analysis',
  group: 'Rope folder',
  keys: [],
  enabled: hasRope,
  run: () => change({ dialog: 'parameters' }),
  undo: 'journal',
};
