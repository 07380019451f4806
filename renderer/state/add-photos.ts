import { analyse } from './analyse.ts';
import type { Trouble } from './app-state.ts';
import { troubleOf } from './open-rope.ts';
import { change, store } from './store.ts';

/** Copies photos into the open folder, each whole or not at all, and places them; the originals stay as they are. */
export async function addPhotos(photos: readonly File[]): Promise<void> {
  const { rope } = store.getState();
  if (rope === null || photos.length === 0) return;
  let added = 0;
  let trouble: Trouble | null = null;
  try {
    for (const photo of photos) {
      await rope.addFile(photo);
      added += 1;
    }
  } catch (error) {
    trouble = troubleOf(error, `${added} of ${photos.length} photos were added; ${photos[added].name} could not be`);
  }
  if (added > 0) await analyse('Placing photos');
  // Only now: an analysis that starts puts former notices away.
  if (trouble !== null) change({ trouble });
}
