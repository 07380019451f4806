import type { RopeSource } from '../host/rope-source.ts';
import type { PhotoReply, PhotoRequest } from './photo-worker.ts';

export type Photo = { readonly address: string; readonly width: number; readonly height: number } | { readonly reason: string };

let worker: Worker | null = null;
let nextId = 1;
const waiting = new Map<number, (reply: PhotoReply) => void>();
const kept = new WeakMap<RopeSource, Map<string, Promise<Photo>>>();

/** A reduced copy of a photo of the rope folder, at most `size` pixels on its longer side; made once and kept while the folder is open. */
export function photoOf(rope: RopeSource, file: string, size: number): Promise<Photo> {
  const held = kept.get(rope) ?? new Map<string, Promise<Photo>>();
  kept.set(rope, held);
  const key = `${size} ${file}`;
  const former = held.get(key);
  if (former) return former;
  const made = make(rope, file, size);
  held.set(key, made);
  return made;
}

async function make(rope: RopeSource, file: string, size: number): Promise<Photo> {
  const source = rope.forWorker();
  const found = source.files.find((each) => each.name === file);
  if (!found) return { reason: 'this photo is not in the rope folder' };
  const id = nextId++;
  const where = 'file' in found ? { file: found.file } : { address: found.address };
  const reply = await new Promise<PhotoReply>((resolve) => {
    waiting.set(id, resolve);
    photoWorker().postMessage({ id, size, ...where } satisfies PhotoRequest);
  });
  return 'reason' in reply ? { reason: reply.reason } : { address: URL.createObjectURL(reply.image), width: reply.width, height: reply.height };
}

function photoWorker(): Worker {
  if (worker === null) {
    worker = new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module', name: 'photos' });
    worker.onmessage = ({ data }: MessageEvent<PhotoReply>) => {
      waiting.get(data.id)?.(data);
      waiting.delete(data.id);
    };
  }
  return worker;
}
