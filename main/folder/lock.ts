import { open, readFile, unlink } from 'node:fs/promises';
import { join } from 'node:path';

const LOCK_FILE = '.strandbook-lock';

export interface Lock {
  release(): Promise<void>;
}

/** One writer per folder: an exclusive file with the process id. A lock whose process is gone is taken over. `held` says by whom it is held. */
export async function lockFolder(folder: string): Promise<{ lock: Lock } | { held: string }> {
  const path = join(folder, LOCK_FILE);
  for (let attempt = 0; attempt < 2; attempt += 1) {
    try {
      const file = await open(path, 'wx');
      await file.writeFile(String(process.pid));
      await file.close();
      return { lock: { release: () => unlink(path).catch(() => undefined) } };
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code !== 'EEXIST') return { held: code === 'EACCES' || code === 'EROFS' || code === 'EPERM' ? 'read-only' : String(error) };
      const owner = Number(await readFile(path, 'utf8').catch(() => ''));
      if (owner > 0 && owner !== process.pid && isRunning(owner)) return { held: `process ${owner}` };
      await unlink(path).catch(() => undefined);
    }
  }
  return { held: 'another process' };
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
