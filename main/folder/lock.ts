import { open, readFile, stat, unlink } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';

const LOCK_FILE = '.strandbook-lock';

export interface Lock {
  release(): Promise<void>;
}

/** A lock file this young may not hold its owner's name yet. */
const WRITING_MS = 10_000;

/**
 * One writer per folder: an exclusive file with process id and computer. A lock whose process is gone is taken over; of
 * another computer's processes nothing is known, so its lock holds. `held` says by whom it is held.
 */
export async function lockFolder(folder: string): Promise<{ lock: Lock } | { held: string }> {
  const path = join(folder, LOCK_FILE);
  for (let attempt = 0; attempt < 2; attempt += 1) {
    try {
      const file = await open(path, 'wx');
      await file.writeFile(`${process.pid} ${hostname()}`);
      await file.close();
      return { lock: { release: () => unlink(path).catch(() => undefined) } };
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code !== 'EEXIST') return { held: code === 'EACCES' || code === 'EROFS' || code === 'EPERM' ? 'read-only' : String(error) };
      const held = await holderOf(path);
      if (held !== null) return { held };
      await unlink(path).catch(() => undefined);
    }
  }
  return { held: 'another process' };
}

/** Who holds the lock, or null where its process is gone. */
async function holderOf(path: string): Promise<string | null> {
  const [pid, host] = (await readFile(path, 'utf8').catch(() => '')).split(' ');
  if (host && host !== hostname()) return `process ${pid} on ${host}; if that program has ended, delete ${LOCK_FILE}`;
  const owner = Number(pid);
  if (owner > 0) return owner !== process.pid && isRunning(owner) ? `process ${owner}` : null;
  const found = await stat(path).catch(() => null);
  return found !== null && Date.now() - found.mtimeMs < WRITING_MS ? 'another process' : null;
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
