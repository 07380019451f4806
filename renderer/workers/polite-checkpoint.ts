import type { Checkpoint } from '../../analysis/rope/checkpoint.ts';
import { Cancelled } from '../../analysis/rope/problem.ts';

/** Milliseconds between two looks at the message queue: a cancel is felt at once, and the work is not slowed. */
const TURN_EVERY = 30;

/** Gives other messages their turn, stops when asked to, and reports progress no more often than the eye can follow. */
export function politeCheckpoint(isCancelled: () => boolean, report: (stage: string, share: number) => void): Checkpoint {
  let last = -Infinity;
  return async (stage, share) => {
    const now = performance.now();
    if (now - last < TURN_EVERY && share < 1) return;
    report(stage, share);
    await turnOfLoop();
    if (isCancelled()) throw new Cancelled();
    last = performance.now();
  };
}

/** Resolves after messages that wait have been delivered. */
export function turnOfLoop(): Promise<void> {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      channel.port1.close();
      resolve();
    };
    channel.port2.postMessage(null);
  });
}
