import type * as Electron from 'electron';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

type Dialogs = Pick<typeof Electron, 'dialog' | 'BrowserWindow'>;

export async function chooseFolder({ dialog }: Dialogs): Promise<string | null> {
  const answer = await dialog.showOpenDialog({ title: 'Open a rope folder', properties: ['openDirectory'] });
  return answer.canceled ? null : (answer.filePaths[0] ?? null);
}

/** Prints a report to a PDF of the user's choice in a hidden window that runs no script. Null when the user thinks better of it. */
export async function printReport({ dialog, BrowserWindow }: Dialogs, html: string): Promise<string | null> {
  const answer = await dialog.showSaveDialog({ title: 'Save the report', defaultPath: 'rope-report.pdf', filters: [{ name: 'PDF', extensions: ['pdf'] }] });
  if (answer.canceled || !answer.filePath) return null;
  const folder = await mkdtemp(join(tmpdir(), 'strandbook-report-'));
  const page = join(folder, 'report.html');
  await writeFile(page, html, { mode: 0o600 });
  const window = new BrowserWindow({ show: false, webPreferences: { javascript: false, sandbox: true, contextIsolation: true, nodeIntegration: false } });
  try {
    await window.loadFile(page);
    await writeFile(answer.filePath, await window.webContents.printToPDF({ pageSize: 'A4', printBackground: true }));
    return answer.filePath;
  } finally {
    window.destroy();
    await rm(folder, { recursive: true, force: true });
  }
}
