import type { Session } from './operations/shell.ts';
import { decodePath } from './page-files.ts';

const IMAGE_TYPES: Readonly<Record<string, string>> = { png: 'image/png', jpg: 'image/jpeg', jpeg: 'image/jpeg', gif: 'image/gif', webp: 'image/webp' };

export interface RopeBytes {
  readonly body: Uint8Array | AsyncIterable<Uint8Array>;
  readonly size: number;
  readonly type: string;
}

/** The bytes of one file of an opened folder, by the path of its address (`/bytes/<token>/<name>`); null where there is none. */
export async function ropeBytes(session: Session, path: string): Promise<RopeBytes | null> {
  const [, , token, ...parts] = path.split('/');
  const opened = session.opened.get(token);
  const name = parts.map(decodePath).join('/');
  const file = opened?.folder.files.find((each) => each.name === name);
  if (!opened || !file) return null;
  const ending = name.slice(name.lastIndexOf('.') + 1).toLowerCase();
  return { body: await opened.folder.read(name), size: file.size, type: IMAGE_TYPES[ending] ?? 'application/octet-stream' };
}
