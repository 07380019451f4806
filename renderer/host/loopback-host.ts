import { HostFailure, checkAnswer } from './host.ts';
import type { Host } from './host.ts';

/** The same contract over 127.0.0.1. The shell's cookie proves that this page is its own. */
export function loopbackHost(fetchFrom: typeof fetch = fetch): Host {
  return {
    hasShell: true,
    async call(name, argument) {
      let response: Response;
      try {
        response = await fetchFrom(`/call/${name}`, { method: 'POST', credentials: 'same-origin', headers: { 'content-type': 'application/json' }, body: JSON.stringify(argument) });
      } catch {
        throw new HostFailure('Strandbook no longer answers on this computer.', 'Start it again (npm start) and reload this page; decisions already made are kept.');
      }
      const body: unknown = await response.json().catch(() => null);
      if (!response.ok) throw new HostFailure(messageOf(body) ?? `The request "${name}" was refused (${response.status}).`, 'Try again; if it is refused again, start Strandbook anew.');
      return checkAnswer(name, body);
    },
    folderOfDrop: () => Promise.resolve(null),
  };
}

function messageOf(body: unknown): string | null {
  if (typeof body !== 'object' || body === null) return null;
  const { error, message } = body as { error?: unknown; message?: unknown };
  if (typeof error === 'string') return error;
  return typeof message === 'string' ? message : null;
}
