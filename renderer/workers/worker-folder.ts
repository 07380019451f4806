import type { RopeFolder } from '../../analysis/assess.ts';
import type { WorkerSource } from '../host/rope-source.ts';

/** The rope folder as the analysis reads it, over whatever source the page was given. */
export function folderOf(source: WorkerSource): RopeFolder {
  if (source.kind === 'files') {
    const files = new Map(source.files.map((each) => [each.name, each.file]));
    return { name: source.name, files: source.files.map(({ name, size }) => ({ name, size })), read: (name) => Promise.resolve(pieces(known(files.get(name), name).stream())) };
  }
  const addresses = new Map(source.files.map((each) => [each.name, each.address]));
  return {
    name: source.name, files: source.files.map(({ name, size }) => ({ name, size })),
    async read(name) {
      const response = await fetch(known(addresses.get(name), name), { credentials: 'same-origin' });
      if (!response.ok || response.body === null) throw new Error(`${name} cannot be read any more (${response.status}); open the folder again`);
      return pieces(response.body);
    },
  };
}

function known<T>(value: T | undefined, name: string): T {
  if (value === undefined) throw new Error(`${name} is not in the rope folder`);
  return value;
}

async function* pieces(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    await reader.cancel().catch(() => undefined);
  }
}
