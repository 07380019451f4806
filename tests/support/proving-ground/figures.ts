/** Values gathered over many trials under one name, and shares of trials that went well. */
export interface Tally {
  add(figure: string, value: number): void;
  hit(figure: string, good: boolean): void;
  /** Remembers that a seed failed at a figure. */
  blame(figure: string, seed: number, detail: string): void;
  values(figure: string): readonly number[];
  share(figure: string): { readonly good: number; readonly all: number };
  readonly blamed: ReadonlyMap<string, readonly { readonly seed: number; readonly detail: string }[]>;
}

export function emptyTally(): Tally {
  const lists = new Map<string, number[]>();
  const shares = new Map<string, { good: number; all: number }>();
  const blamed = new Map<string, { seed: number; detail: string }[]>();
  const get = <T>(map: Map<string, T>, key: string, fresh: T): T => {
    if (!map.has(key)) map.set(key, fresh);
    return map.get(key)!;
  };
  return {
    add: (figure, value) => { get(lists, figure, []).push(value); },
    hit: (figure, good) => {
      const share = get(shares, figure, { good: 0, all: 0 });
      share.all += 1;
      if (good) share.good += 1;
    },
    blame: (figure, seed, detail) => { get(blamed, figure, []).push({ seed, detail }); },
    values: (figure) => lists.get(figure) ?? [],
    share: (figure) => shares.get(figure) ?? { good: 0, all: 0 },
    blamed,
  };
}

export function quantileOf(values: readonly number[], share: number): number {
  if (values.length === 0) return NaN;
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

export const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
