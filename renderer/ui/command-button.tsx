import type { ReactNode } from 'react';
import type { Command } from '../state/command.ts';
import { runCommand } from '../state/run-command.ts';
import { useApp } from '../state/store.ts';

interface CommandButtonProps {
  readonly command: Command;
  /** Left out: the title of the command. */
  readonly children?: ReactNode;
  readonly className?: string;
}

/** A button for a command: same act, same conditions, same name as by its key. */
export function CommandButton({ command, children, className }: CommandButtonProps) {
  const enabled = useApp((state) => command.enabled(state));
  const title = command.keys.length > 0 ? `${command.title} (${command.keys[0]})` : command.title;
  return (
    <button type="button" className={className} disabled={!enabled} onClick={() => runCommand(command)} title={title} aria-label={typeof children === 'string' && !/[a-z0-9]/i.test(children) ? command.title : undefined} aria-keyshortcuts={command.keys.length > 0 ? ariaKeys(command.keys) : undefined}>
      {children ?? command.title}
    </button>
  );
}

function ariaKeys(keys: readonly string[]): string {
  return keys.map((key) => key.replace('Ctrl', 'Control').replace(/^\+$/, 'Plus').replace(/^ $/, 'Space')).join(' ');
}
