import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const showCautions: Command = {
  name: 'show-cautions',
  title: 'Show the cautions',
  group: 'Window',
  keys: ['c'],
  enabled: hasRope,
  run: () => change({ dialog: 'cautions' }),
  undo: 'nothing',
};
