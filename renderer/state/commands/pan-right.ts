import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { moved } from '../rope-window.ts';
import { showWindow } from '../show.ts';

export const panRight: Command = {
  name: 'pan-right',
  title: 'Move towards end B',
  group: 'Strips',
  keys: ['ArrowRight'],
  enabled: hasRope,
  run: ({ window, view }) => { if (view !== null) showWindow(moved(window, 0.2, view.extent), false); },
  undo: 'view',
};
