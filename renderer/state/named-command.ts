import { ALL_COMMANDS } from './all-commands.ts';
import type { Command } from './command.ts';

/** The command of that name; a name that no command has is a mistake in the program. */
export function commandNamed(name: string): Command {
  const found = ALL_COMMANDS.find((command) => command.name === name);
  if (!found) throw new Error(`no command is named ${name}`);
  return found;
}
