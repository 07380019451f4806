import { mkdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { z } from 'zod';

const recentSchema = z.array(z.object({ path: z.string(), openedAt: z.string() }));
export type Recent = z.infer<typeof recentSchema>;
const MOST = 12;

/** Newest first. A list that cannot be read counts as empty: it holds nothing that the disk does not. */
export async function readRecent(settings: string): Promise<Recent> {
  try {
    return recentSchema.parse(JSON.parse(await readFile(join(settings, 'recent.json'), 'utf8')));
  } catch {
    return [];
  }
}

export async function writeRecent(settings: string, recent: Recent): Promise<void> {
  await mkdir(settings, { recursive: true });
  await writeFileAtomic(join(settings, 'recent.json'), JSON.stringify(recent.slice(0, MOST), null, 1));
}
