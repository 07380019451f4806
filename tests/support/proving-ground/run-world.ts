import { assess } from '../../../analysis/assess.ts';
import type { Assessment } from '../../../analysis/assessment/schema.ts';
import { noCheckpoint } from '../../../analysis/rope/checkpoint.ts';
import { createHash } from '../run-of.ts';
import { drawWorld } from './rope-world.ts';
import type { Profile, RopeWorld } from './rope-world.ts';
import type { Recorded } from './record-scan.ts';
import { writeFolder } from './write-folder.ts';

/** A world, what its files truly hold, and what the program made of the files alone. */
export interface Trial {
  readonly world: RopeWorld;
  readonly recorded: readonly Recorded[];
  readonly assessment: Assessment;
  readonly seconds: number;
}

/** Draws a world, hands its folder to the pipeline, and returns both. The pipeline sees the folder and nothing else. */
export async function runWorld(seed: number, profile: Profile): Promise<Trial> {
  const world = drawWorld(seed, profile);
  const { folder, recorded } = writeFolder(world);
  const started = performance.now();
  const { assessment } = await assess(folder, { generated: '2026-01-01T00:00:00Z', product: 'proving ground', createHash, checkpoint: noCheckpoint, journal: [] });
  return { world, recorded, assessment, seconds: (performance.now() - started) / 1000 };
}
