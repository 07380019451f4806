import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../analysis/assess.ts';
import type { Analysis } from '../../analysis/assess.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { sectionHistory } from '../../analysis/section/section-history.ts';
import { openRopeFolder } from '../../main/folder/rope-folder.ts';
import { nodeHasher } from '../../main/hasher.ts';

/** The committed sample of a rope that parted at 312.3 m, where the head's reach ended at 312.4 m (SYNTHETIC). */
let analysis: Analysis;
beforeAll(async () => {
  const folder = await openRopeFolder(join(import.meta.dirname, '../../sample-signals/parted-rope'));
  analysis = await assess(folder, { generated: '2026-01-01T00:00:00Z', product: 'test', createHash: nodeHasher, journal: [], checkpoint: noCheckpoint });
}, 60_000);
const ask = async (at: number, halfWidth = 3, date: string | null = null) => (await sectionHistory(analysis, { at, halfWidth, date })).section;

describe('the rope that parted', () => {
  it('showed its deterioration where it parted, as far as the head reached, and the rest is named', async () => {
    const section = await ask(312.3);
    expect(section.finding).toBe('indicated');
    expect(section.reason).toMatch(/NOT INSPECTED/);
    const newest = section.inspections[2];
    expect(newest.coverage_share).toBeCloseTo(3.1 / 6, 1);
    expect(newest.loss_rank_percentile).toBeGreaterThan(98);
    expect(newest.texture_ratio!).toBeGreaterThan(2);
    expect(newest.notes.map((note) => note.kind)).toContain('broken-wires');
    expect(section.growth.find((each) => each.subject === 'zone')?.state).toBe('growing');
    expect(section.criteria.find((each) => each.clause === 'area-6d')?.utilisation).toBeGreaterThan(0.8);
  });

  it('shows less the earlier one asks', async () => {
    const losses = (await ask(311)).inspections.map((each) => each.mean_loss_percent!);
    expect(losses[0]).toBeLessThan(losses[1]);
    expect(losses[1]).toBeLessThan(losses[2]);
    const before = await ask(311, 1.3, '2023-01-01');
    expect(before.inspections.map((each) => each.date)).toEqual(['2022-04-26']);
    expect(before.finding).toBe('not-indicated');
  });

  it('says nothing of the guide tube, where the rope was worst and nobody looked', async () => {
    expect(await ask(316)).toMatchObject({ finding: 'not-inspected', criteria: [], growth: [] });
    expect((await ask(312.8, 0.3)).finding).toBe('not-inspected');
  });

  it('shows nothing at a quiet place', async () => {
    expect((await ask(100)).finding).toBe('not-indicated');
  });
});
