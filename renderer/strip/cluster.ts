/** Things too near to each other to be drawn apart, as one; `from`..`to` in metres. */
export interface Cluster<T> {
  readonly from: number;
  readonly to: number;
  readonly members: readonly T[];
}

/** Joins things whose middles are less than `apart` metres from the former one's; sorted by position. Time: n log n. */
export function clustersOf<T>(things: readonly T[], whereOf: (thing: T) => { readonly from: number; readonly to: number }, apart: number): Cluster<T>[] {
  const middle = (thing: T) => (whereOf(thing).from + whereOf(thing).to) / 2;
  const sorted = [...things].sort((a, b) => middle(a) - middle(b));
  const clusters: { from: number; to: number; members: T[]; start: number }[] = [];
  for (const thing of sorted) {
    const at = middle(thing);
    const { from, to } = whereOf(thing);
    const last = clusters.at(-1);
    // Counted from the first member, so that a long even row of faults does not become one endless cluster.
    if (last && at - last.start < apart) {
      last.members.push(thing);
      last.from = Math.min(last.from, from);
      last.to = Math.max(last.to, to);
    } else clusters.push({ from, to, members: [thing], start: at });
  }
  return clusters;
}
