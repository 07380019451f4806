import type { VisualNote } from '../../analysis/intake/visual-note.ts';
import { dayOf, stretch } from '../text/format.ts';
import { plain } from '../text/words.ts';
import { Sheet } from '../ui/dialog.tsx';
import { NoteItem } from '../ui/note-item.tsx';
import { useView } from './use-inspections.ts';

/** Visual notes of one place in full, with their photos. */
export function NotesDialog({ notes, onClose }: { readonly notes: readonly VisualNote[]; readonly onClose: () => void }) {
  const { inspections } = useView();
  return (
    <Sheet title={notes.length === 1 ? `Seen by eye at ${stretch(notes[0].from, notes[0].to)}` : `${notes.length} visual notes`} onClose={onClose} wide>
      <ul className="notes">
        {notes.map((note) => {
          const date = inspections.find((each) => each.id === note.inspection)?.date;
          const kind = note.kind === 'other' ? note.kindAsWritten : plain(note.kind);
          return (
            <NoteItem key={`${note.inspection} ${note.id}`} photo={note.photo} inspection={note.inspection} size={420} alt={`Photo of ${kind} at ${stretch(note.from, note.to)}`}
              what={<><b>{kind}</b> {note.value === null ? '' : `${note.value} ${note.unit}`} {note.severity}</>} where={`${stretch(note.from, note.to)}, ${date === undefined ? note.inspection : dayOf(date)}`} remark={note.remark} />
          );
        })}
      </ul>
    </Sheet>
  );
}
