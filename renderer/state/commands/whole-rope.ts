import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { showWindow } from '../show.ts';

export const wholeRope: Command = {
  name: 'whole-rope',
  title: 'Show the whole rope',
  group: 'Strips',
  keys: ['0'],
  enabled: hasRope,
  run: ({ view }) => { if (view !== null) showWindow(view.extent, true); },
  undo: 'view',
};
