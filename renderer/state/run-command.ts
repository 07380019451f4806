import type { Command } from './command.ts';
import { troubleOf } from './open-rope.ts';
import { change, store } from './store.ts';

/** Runs a command if it may be run now; what goes wrong is shown, never swallowed. */
export function runCommand(command: Command): void {
  const state = store.getState();
  if (!command.enabled(state)) return;
  void Promise.resolve()
    .then(() => command.run(state))
    .catch((error: unknown) => change({ trouble: troubleOf(error, `"${command.title}" did not work`) }));
}
