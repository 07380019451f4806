import type * as Electron from 'electron';

/** The system's own menu entries only: every command of the app lives in the page, where both shells have it. */
export function buildMenu(menu: Pick<typeof Electron.Menu, 'buildFromTemplate'>): Electron.Menu {
  return menu.buildFromTemplate([
    { label: 'File', submenu: [{ role: 'close' }, { role: 'quit' }] },
    { label: 'Edit', submenu: [{ role: 'undo' }, { role: 'redo' }, { type: 'separator' }, { role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }] },
    { label: 'View', submenu: [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, { type: 'separator' }, { role: 'togglefullscreen' }] },
  ]);
}
