import type { Command } from '../command.ts';
import { closeRope } from '../open-rope.ts';

export const closeFolder: Command = {
  name: 'close-rope',
  title: 'Close this rope',
  group: 'Rope folder',
  keys: [],
  enabled: (state) => state.rope !== null,
  run: () => closeRope(),
  undo: 'nothing',
};
