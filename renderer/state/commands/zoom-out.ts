import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { zoomed } from '../rope-window.ts';
import { showWindow } from '../show.ts';

export const zoomOut: Command = {
  name: 'zoom-out',
  title: 'Zoom out',
  group: 'Strips',
  keys: ['-'],
  enabled: hasRope,
  run: ({ window, view }) => {
    if (view !== null) showWindow(zoomed(window, 2, (window.from + window.to) / 2, view.extent), false);
  },
  undo: 'view',
};
