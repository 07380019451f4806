import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { stepCursor } from '../step-cursor.ts';

export const cursorRight: Command = {
  name: 'cursor-right',
  title: 'Move the cursor towards end B',
  group: 'Strips',
  keys: ['Shift+ArrowRight'],
  enabled: hasRope,
  run: (state) => stepCursor(state, 1),
  undo: 'nothing',
};
