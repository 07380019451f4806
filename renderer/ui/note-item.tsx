import type { ReactNode } from 'react';
import { PhotoView } from './photo-view.tsx';

interface NoteItemProps {
  readonly photo: string | null;
  readonly inspection: string;
  readonly size: number;
  readonly alt: string;
  /** What was seen, where and when, and what there is to say of it. */
  readonly what: ReactNode;
  readonly where: string;
  readonly remark: string;
}

/** One thing that was seen, with its photo where there is one. */
export function NoteItem({ photo, inspection, size, alt, what, where, remark }: NoteItemProps) {
  return (
    <li>
      {photo !== null && <PhotoView photo={photo} inspection={inspection} size={size} alt={alt} />}
      <div><p>{what}</p><p className="quiet">{where}</p>{remark !== '' && <p>{remark}</p>}</div>
    </li>
  );
}
