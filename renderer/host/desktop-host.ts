import type { Bridge } from '../../main/contract.ts';
import { HostFailure, checkAnswer } from './host.ts';
import type { Host } from './host.ts';

/** The desktop shell, through the bridge that its preload puts into the window. */
export function desktopHost(bridge: Bridge): Host {
  return {
    hasShell: true,
    async call(name, argument) {
      let answer: unknown;
      try {
        answer = await bridge.call(name, argument);
      } catch (error) {
        throw new HostFailure(withoutPreface(error), 'Try again; if the folder was moved or renamed, open it from its new place.');
      }
      return checkAnswer(name, answer);
    },
    folderOfDrop: (files) => bridge.folderOfDrop(files),
  };
}

/** Electron puts its own words before the message of a handler. */
function withoutPreface(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.replace(/^Error invoking remote method '[^']*': (\w*Error: )?/, '');
}
