import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { stepCursor } from '../step-cursor.ts';

export const cursorLeft: Command = {
  name: 'cursor-left',
  title: 'Move the cursor towards end A',
  group: 'Strips',
  keys: ['Shift+ArrowLeft'],
  enabled: hasRope,
  run: (state) => stepCursor(state, -1),
  undo: 'nothing',
};
