import { describe, expect, it } from 'vitest';
import { alignInspections } from '../../analysis/alignment/align-inspections.ts';
import { toRope, uncertaintyAt } from '../../analysis/alignment/rope-map.ts';
import type { RopeMap } from '../../analysis/alignment/rope-map.ts';
import { noCheckpoint } from '../../analysis/rope/checkpoint.ts';
import { measuredPosition } from '../../analysis/rope/units.ts';
import { alignLab, errorsOf, quantileOf } from '../bench/alignment.ts';
import { drawWarpedRope } from '../support/lab-warp.ts';
import type { WarpOptions } from '../support/lab-warp.ts';

/** Ropes of the laboratory: random texture, breaks, growth, dropouts, scale errors to 0.5 %, slips to 0.5 m, starts off by 20 m. Seeds as they come. */
async function align(seed: number, options: Partial<WarpOptions>): Promise<{ rope: ReturnType<typeof drawWarpedRope>; maps: RopeMap[] }> {
  const rope = drawWarpedRope(seed, { length: 300, ...options });
  return { rope, maps: await alignLab(rope) };
}

describe('maps of laboratory ropes with ordinary character', () => {
  it.each([
    ['as they come', {}], ['seen against the rope by a coil', { coil: true, reverse: 'always' }], ['on a loop with any start', { loop: true }],
    ['cut with no record', { cut: 'unrecorded' }], ['cut on record', { cut: 'recorded' }], ['without a single fault', { faultEvery: null }], ['with many slips', { slips: 8 }],
    ['sampled at 20 mm', { steps: [0.02] }], ['in three inspections', { scans: 3 }],
  ] as [string, Partial<WarpOptions>][])('%s: half within 0.01 m, 95 of 100 within 0.05 m, 0.15 m beside a slip in half of places, bounds kept', async (_, options) => {
    const [all, near] = [[], []] as number[][];
    let [inside, places] = [0, 0];
    for (const seed of [101, 102, 103]) {
      const { rope, maps } = await align(seed, options);
      rope.scans.forEach((scan, k) => {
        if (k === 0) return;
        const errors = errorsOf(maps[k], scan, rope.loopLength);
        expect(errors.directionRight).toBe(true);
        all.push(...errors.all);
        near.push(...errors.nearSlip);
        inside += errors.bounds.filter((ratio) => ratio >= 1).length;
        places += errors.bounds.length;
      });
    }
    expect(quantileOf(all, 0.5)).toBeLessThanOrEqual(0.01);
    expect(quantileOf(all, 0.95)).toBeLessThanOrEqual(0.05);
    if (near.length > 0) expect(quantileOf(near, 0.5)).toBeLessThanOrEqual(0.15);
    expect(inside / places).toBeGreaterThanOrEqual(0.95);
  });
});

describe('a rope without character', () => {
  it.each([201, 202, 203])('is not recognised, and its bound holds the truth (seed %i)', async (seed) => {
    const { rope, maps } = await align(seed, { textureRatio: 0, faultEvery: null, growth: false, reverse: 'never' });
    const errors = errorsOf(maps[1], rope.scans[1], null);
    expect(maps[1].confidence).toBeLessThan(0.1);
    expect(errors.bounds.every((ratio) => ratio >= 1)).toBe(true);
    expect(maps[1].remarks.join()).toContain('could not be matched');
  });
});

describe('what the map says', () => {
  it('says that a rope was cut with no event on record', async () => {
    const found = await Promise.all([101, 102, 103, 104].map(async (seed) => {
      const { rope, maps } = await align(seed, { cut: 'unrecorded', startError: 0, reverse: 'never' });
      const start = rope.scans[1].truth[0].rope - rope.scans[1].truth[0].measured;
      return { cutAtA: Math.abs(start) > 0.6, said: maps[1].remarks.some((remark) => remark.includes('unrecorded cut')) };
    }));
    expect(found.map((each) => each.said)).toEqual(found.map((each) => each.cutAtA));
    expect(found.some((each) => each.cutAtA)).toBe(true);
  });

  it('agrees over all scans: a to c found directly and through b', async () => {
    const { rope, maps } = await align(105, { scans: 3, reverse: 'never' });
    const alone = await alignInspections([0, 2].map((k) => ({ id: `scan ${k}`, date: rope.dates[k], trace: rope.scans[k].trace, statedDirection: null, positionsFell: false, tiePoints: [] })), { ropeLength: rope.ropeLength, loopLength: null, landmarks: [], events: [], checkpoint: noCheckpoint });
    const { trace } = rope.scans[2];
    for (let m = trace.start + 5; m < trace.start + trace.length * trace.step - 5; m += 7) {
      const apart = Math.abs(toRope(maps[2], measuredPosition(m)) - toRope(alone[1], measuredPosition(m)));
      expect(apart).toBeLessThanOrEqual(uncertaintyAt(maps[2], measuredPosition(m)) + uncertaintyAt(alone[1], measuredPosition(m)));
    }
  });

  it('lays a scan that came twice on itself', async () => {
    for (const seed of [1, 4]) {
      const rope = drawWarpedRope(seed, { length: 300 });
      const { trace } = rope.scans[0];
      const [, map] = await alignLab({ ...rope, scans: [rope.scans[0], rope.scans[0]] });
      expect(map.slips).toEqual([]);
      for (let m = trace.start + 1; m < trace.start + trace.length * trace.step - 1; m += 0.5) expect(Math.abs(toRope(map, measuredPosition(m)) - m)).toBeLessThan(0.002);
    }
  });

  it('notices that loss points the other way in one scan', async () => {
    const rope = drawWarpedRope(106, { length: 300, reverse: 'never' });
    const { loss } = rope.scans[1].trace;
    const turned = { ...rope.scans[1], trace: { ...rope.scans[1].trace, loss: { ...loss!, values: loss!.values.map((value) => -value) } } };
    const [straight] = [await alignLab(rope), 0];
    const opposed = await alignLab({ ...rope, scans: [rope.scans[0], turned] });
    expect(straight[1].opposed).toBe(false);
    expect(opposed[1].opposed).toBe(true);
    expect(quantileOf(errorsOf(opposed[1], turned, null).all, 0.95)).toBeLessThanOrEqual(0.05);
  });

  it('is one rope axis however the scans are named, and the same twice', async () => {
    const { maps } = await align(107, {});
    expect((await align(107, {})).maps).toEqual(maps);
  });
});
