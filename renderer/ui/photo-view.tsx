import { useEffect, useState } from 'react';
import { photoFile } from '../../analysis/intake/photos/photo-file.ts';
import { useApp } from '../state/store.ts';
import { photoOf } from '../workers/photos.ts';
import type { Photo } from '../workers/photos.ts';
import { Glyph } from './glyph.tsx';

interface PhotoViewProps {
  readonly photo: string;
  readonly inspection: string;
  readonly size: number;
  readonly alt: string;
}

/** A photo of a note, reduced; a file that is no image is shown as just that. */
export function PhotoView({ photo, inspection, size, alt }: PhotoViewProps) {
  const rope = useApp((state) => state.rope);
  const record = useApp((state) => state.view?.record);
  const [made, setMade] = useState<{ key: string; photo: Photo } | null>(null);
  const file = rope && record ? photoFile(photo, inspection, record, rope.files) : null;
  const key = `${file} ${size}`;
  useEffect(() => {
    if (rope === null || file === null) return;
    let gone = false;
    void photoOf(rope, file, size).then((result) => { if (!gone) setMade({ key, photo: result }); });
    return () => { gone = true; };
  }, [rope, file, size, key]);
  if (rope === null) return null;
  if (file === null) return <NoPhoto name={photo} reason="this photo is not in the rope folder" small={size < 100} />;
  if (made === null || made.key !== key) return <span className="photo photo-waiting" aria-label={`Loading ${photo}`} role="img" />;
  if ('reason' in made.photo) return <NoPhoto name={photo} reason={made.photo.reason} small={size < 100} />;
  return <img className="photo" src={made.photo.address} width={made.photo.width} height={made.photo.height} alt={alt} />;
}

function NoPhoto({ name, reason, small }: { readonly name: string; readonly reason: string; readonly small: boolean }) {
  return small
    ? <span className="photo photo-none" role="img" aria-label={`${name}: ${reason}`} title={`${name}: ${reason}`}><Glyph name="caution" /></span>
    : <span className="photo photo-none photo-none-wide"><Glyph name="caution" size={16} /> <span><b>{name}</b><br />{reason}</span></span>;
}
