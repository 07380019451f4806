/**
 * Holds back questions until the running task ends, and answers only the newest of each name:
 * whoever drags a strip asks for more windows than can be drawn, and only the last one matters.
 */
export interface Waiting<Q> {
  readonly name: string;
  readonly id: number;
  readonly question: Q;
}

export function newestWins<Q>(answer: (waiting: Waiting<Q>) => Promise<void>, superseded: (waiting: Waiting<Q>) => void, later: (task: () => void) => void) {
  const held = new Map<string, Waiting<Q>>();
  let working = false;

  async function drain(): Promise<void> {
    working = true;
    while (held.size > 0) {
      const [next] = held.values();
      held.delete(next.name);
      await answer(next);
    }
    working = false;
  }

  return (waiting: Waiting<Q>): void => {
    const older = held.get(waiting.name);
    if (older) superseded(older);
    held.delete(waiting.name);
    held.set(waiting.name, waiting);
    if (!working) {
      working = true;
      later(() => void drain());
    }
  };
}
