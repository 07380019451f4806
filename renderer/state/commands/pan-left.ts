import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { moved } from '../rope-window.ts';
import { showWindow } from '../show.ts';

export const panLeft: Command = {
  name: 'pan-left',
  title: 'Move towards end A',
  group: 'Strips',
  keys: ['ArrowLeft'],
  enabled: hasRope,
  run: ({ window, view }) => { if (view !== null) showWindow(moved(window, -0.2, view.extent), false); },
  undo: 'view',
};
