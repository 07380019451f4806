import { readFileSync } from 'node:fs';

export interface PathPoint {
  readonly t: number;
  readonly value: number;
}

/** Readings of every unit of one published set, by unit. */
export type DegradationSet = ReadonlyMap<string, readonly PathPoint[]>;

function readSet(file: string, unit: string, time: string, value: string): DegradationSet {
  const text = readFileSync(new URL(`../published/data/life/${file}`, import.meta.url), 'utf8');
  const [names, ...rows] = text.trim().split(/\r?\n/).map((line) => line.split(','));
  const [u, t, v] = [unit, time, value].map((name) => names.indexOf(name));
  const paths = new Map<string, PathPoint[]>();
  for (const row of rows) {
    if (!paths.has(row[u])) paths.set(row[u], []);
    paths.get(row[u])!.push({ t: Number(row[t]), value: Number(row[v]) });
  }
  return paths;
}

/** Metal fatigue: crack length in inches by million cycles, 21 paths. Lu and Meeker 1993, Technometrics 35:161; R nlme::Fatigue. */
export const FATIGUE = readSet('fatigue_lu_meeker.csv', 'path', 'mega_cycles', 'crack_length_in');

/** GaAs lasers: increase of operating current in percent by hours, 15 units. Meeker and Escobar 1998; carried by SMRD. */
export const GAAS = readSet('gaas_laser.csv', 'unit', 'hours', 'current_increase_percent');

/** Sliding wear of metal: micrometres by cycles, 12 units. Meeker and Escobar 1998; carried by SMRD. */
export const SLIDING_WEAR = readSet('metal_sliding_wear.csv', 'unit', 'cycles', 'wear_um');

/** First passage of a path: log-linear between the two readings about it, as the reference results were made; null where it never passes. */
export function observedPassage(points: readonly PathPoint[], limit: number): number | null {
  const after = points.findIndex((each) => each.value >= limit);
  if (after <= 0) return null;
  const [before, behind] = [points[after - 1], points[after]];
  return before.t + ((behind.t - before.t) * Math.log(limit / before.value)) / Math.log(behind.value / before.value);
}
