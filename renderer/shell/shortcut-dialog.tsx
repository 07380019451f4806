import { ALL_COMMANDS } from '../state/all-commands.ts';
import { change } from '../state/store.ts';
import { Sheet } from '../ui/dialog.tsx';

const UNDO_WORDS = { nothing: '', view: 'back with Backspace', journal: 'taken back with Ctrl+Z; the journal keeps both' } as const;

/** All keys by group, with how each act is taken back. */
export function ShortcutDialog() {
  const groups = [...new Set(ALL_COMMANDS.map((command) => command.group))];
  return (
    <Sheet title="Keys" onClose={() => change({ dialog: null })} wide>
      <p className="quiet">On the strips: the wheel zooms at the pointer, a drag moves along the rope, Shift with the wheel moves, a click puts the cursor.</p>
      <div className="shortcuts">
        {groups.map((group) => (
          <section key={group} aria-label={group}>
            <h3>{group}</h3>
            <dl>{ALL_COMMANDS.filter((command) => command.group === group && command.keys.length > 0).map((command) => (
              <div key={command.name}><dt>{command.keys.map((key) => <kbd key={key}>{key}</kbd>)}</dt><dd>{command.title}{UNDO_WORDS[command.undo] !== '' && <small> {UNDO_WORDS[command.undo]}</small>}</dd></div>
            ))}</dl>
          </section>
        ))}
      </div>
    </Sheet>
  );
}
