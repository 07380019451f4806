import { useEffect, useState } from 'react';
import { readDrop } from '../host/read-drop.ts';
import { openDropped, openEntry, troubleOf } from '../state/open-rope.ts';
import { change, store } from '../state/store.ts';

/** The whole window takes a dropped folder: by the shell where it knows the path, so that decisions are kept, else in the page. */
export function DropTarget() {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
    const onOver = (event: DragEvent) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'copy';
      setOver(true);
    };
    const onLeave = (event: DragEvent) => { if (event.relatedTarget === null) setOver(false); };
    const onDrop = (event: DragEvent) => {
      if (!holdsFiles(event) || event.dataTransfer === null) return;
      event.preventDefault();
      setOver(false);
      openDrop(event.dataTransfer).catch((error: unknown) => change({ trouble: troubleOf(error, 'What was dropped cannot be read') }));
    };
    window.addEventListener('dragenter', onOver);
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragenter', onOver);
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, []);
  return over ? <div className="drop-over" aria-hidden="true"><p>Drop the rope folder</p></div> : null;
}

async function openDrop(transfer: DataTransfer): Promise<void> {
  const { host } = store.getState();
  const plain = [...transfer.files];
  const reading = readDrop(transfer);
  const entry = await host?.folderOfDrop(plain);
  if (entry) await openEntry(entry);
  else await openDropped(await reading);
}
