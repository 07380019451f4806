/// <reference lib="webworker" />
import { imageKind } from '../../analysis/intake/image-kind.ts';

/** Makes small copies of photos off the page's thread. The original is read and never changed; the copy carries no place or camera data. */
export type PhotoRequest = { readonly id: number; readonly size: number } & ({ readonly address: string } | { readonly file: File });
export type PhotoReply = { readonly id: number } & ({ readonly image: Blob; readonly width: number; readonly height: number } | { readonly reason: string });

async function bytesOf(request: PhotoRequest): Promise<Blob> {
  if ('file' in request) return request.file;
  const response = await fetch(request.address, { credentials: 'same-origin' });
  if (!response.ok) throw new Error('the file cannot be read');
  return response.blob();
}

async function reduced(request: PhotoRequest): Promise<PhotoReply> {
  const blob = await bytesOf(request);
  const kind = imageKind(new Uint8Array(await blob.slice(0, 32).arrayBuffer()));
  if (kind === null) return { id: request.id, reason: 'this file is not an image' };
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(blob, { imageOrientation: 'from-image' });
  } catch {
    return { id: request.id, reason: `this ${kind} image is damaged or of a kind that this window cannot show` };
  }
  const scale = Math.min(1, request.size / Math.max(bitmap.width, bitmap.height));
  const canvas = new OffscreenCanvas(Math.max(1, Math.round(bitmap.width * scale)), Math.max(1, Math.round(bitmap.height * scale)));
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  return { id: request.id, image: await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 }), width: canvas.width, height: canvas.height };
}

self.onmessage = ({ data }: MessageEvent<PhotoRequest>) => {
  reduced(data).then(
    (reply) => self.postMessage(reply),
    (error: unknown) => self.postMessage({ id: data.id, reason: error instanceof Error ? error.message : String(error) } satisfies PhotoReply),
  );
};
