import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { change } from '../store.ts';

export const historyHere: Command = {
  name: 'history-here',
  title: 'History at this place',
  group: 'Places',
  keys: ['h'],
  enabled: hasRope,
  run: ({ cursor, window }) => change({ screen: 'section', cursor: cursor ?? (window.from + window.to) / 2 }),
  undo: 'nothing',
};
