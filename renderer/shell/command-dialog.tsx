import { useMemo, useState } from 'react';
import { ALL_COMMANDS } from '../state/all-commands.ts';
import type { Command } from '../state/command.ts';
import { runCommand } from '../state/run-command.ts';
import { change, store } from '../state/store.ts';
import { Sheet } from '../ui/dialog.tsx';

/** Every command by a few letters of its name. */
export function CommandDialog() {
  const [wanted, setWanted] = useState('');
  const [at, setAt] = useState(0);
  const found = useMemo(() => matching(wanted), [wanted]);
  const run = (command: Command | undefined) => {
    if (!command) return;
    change({ dialog: null });
    runCommand(command);
  };
  const onKey = (event: React.KeyboardEvent) => {
    if (event.key === 'Enter') run(found[at]);
    else if (event.key === 'ArrowDown') setAt(Math.min(found.length - 1, at + 1));
    else if (event.key === 'ArrowUp') setAt(Math.max(0, at - 1));
    else return;
    event.preventDefault();
  };
  return (
    <Sheet title="Find a command" onClose={() => change({ dialog: null })}>
      <input className="command-find" type="text" autoFocus role="combobox" aria-expanded="true" aria-controls="commands-found" aria-activedescendant={found[at] ? `command-${found[at].name}` : undefined} aria-label="Part of a command's name" value={wanted}
        onChange={(event) => { setWanted(event.target.value); setAt(0); }} onKeyDown={onKey} />
      <ul className="commands" id="commands-found" role="listbox" aria-label="Commands">
        {found.map((command, index) => (
          <li key={command.name} id={`command-${command.name}`} role="option" aria-selected={index === at} onClick={() => run(command)}>
            <span>{command.title}</span><small>{command.group}</small>{command.keys.length > 0 && <kbd>{command.keys[0]}</kbd>}
          </li>
        ))}
      </ul>
      {found.length === 0 && <p className="empty">No command that can be used now has this in its name.</p>}
    </Sheet>
  );
}

function matching(wanted: string): Command[] {
  const words = wanted.toLowerCase().split(/\s+/).filter(Boolean);
  const state = store.getState();
  return ALL_COMMANDS.filter((command) => command.name !== 'show-commands' && command.enabled(state) && words.every((word) => command.title.toLowerCase().includes(word) || command.group.toLowerCase().includes(word)));
}
