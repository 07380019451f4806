import { ALL_COMMANDS } from './all-commands.ts';
import type { Command } from './command.ts';
import { runCommand } from './run-command.ts';
import { store } from './store.ts';

/** The name of a key press as commands write it, such as `Ctrl+Shift+R`. The command key of a Mac counts as Ctrl. */
function keyName(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>): string {
  const letter = /^[a-z]$/i.test(event.key);
  const withModifier = event.ctrlKey || event.metaKey || event.altKey;
  const key = letter ? (withModifier ? event.key.toUpperCase() : event.key.toLowerCase()) : event.key;
  const shift = event.shiftKey && (letter || event.key.length > 1);
  return `${event.ctrlKey || event.metaKey ? 'Ctrl+' : ''}${event.altKey ? 'Alt+' : ''}${shift ? 'Shift+' : ''}${key}`;
}

/** True where a key press belongs to the field or list that has the focus. */
function belongsToField(event: KeyboardEvent): boolean {
  const target = event.target instanceof Element ? event.target : null;
  if (target === null) return false;
  if (target.closest('input:not([type=checkbox]):not([type=radio]), textarea, select, [contenteditable=true]')) return !event.ctrlKey && !event.metaKey && event.key !== 'Escape';
  if (/^Arrow/.test(event.key)) return target.closest('[role=tablist], [role=listbox], [role=menu], [role=slider], [role=radiogroup], .scrolls') !== null;
  return false;
}

function commandFor(name: string): Command | undefined {
  const state = store.getState();
  return ALL_COMMANDS.find((command) => command.keys.includes(name) && command.enabled(state));
}

/** One listener for every key of the window. An open dialog keeps its own keys. */
export function listenForKeys(view: Window): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.defaultPrevented || store.getState().dialog !== null || belongsToField(event)) return;
    const command = commandFor(keyName(event));
    if (!command) return;
    event.preventDefault();
    runCommand(command);
  };
  view.addEventListener('keydown', onKey);
  return () => view.removeEventListener('keydown', onKey);
}
