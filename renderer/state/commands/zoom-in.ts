import { hasRope } from '../command.ts';
import type { Command } from '../command.ts';
import { zoomed } from '../rope-window.ts';
import { showWindow } from '../show.ts';

export const zoomIn: Command = {
  name: 'zoom-in',
  title: 'Zoom in',
  group: 'Strips',
  keys: ['+', '='],
  enabled: hasRope,
  run: ({ window, cursor, view }) => {
    const about = cursor !== null && cursor >= window.from && cursor <= window.to ? cursor : (window.from + window.to) / 2;
    if (view !== null) showWindow(zoomed(window, 0.5, about, view.extent), false);
  },
  undo: 'view',
};
