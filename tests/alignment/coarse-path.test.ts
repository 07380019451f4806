import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Character } from '../../analysis/alignment/character.ts';
import { coarsePath, lagChange } from '../../analysis/alignment/coarse-path.ts';
import { coarseReference, evidenceNear, evidenceOfWindows, placesOf } from '../../analysis/alignment/coarse-reference.ts';
import { ALIGNMENT } from '../../analysis/alignment/parameters.ts';
import { walkAlong } from '../../analysis/alignment/walk-along.ts';
import { labRandom } from '../support/lab-random.ts';

function characterOf(length: number, seed: number): Character {
  const random = labRandom(seed);
  const texture = Float64Array.from({ length }, () => random.normal());
  const events = Float64Array.from({ length }, () => (random.uniform() < 0.1 ? random.between(1, 5) : 0));
  return { start: 0, bin: 0.1, length, texture, textureSeen: new Uint8Array(length).fill(1), events, fault: new Float64Array(length), faultSeen: new Uint8Array(length) };
}

const modulo = (i: number, size: number): number => ((i % size) + size) % size;

describe.each([['an open rope', false], ['a loop', true]])('coarse evidence on %s', (_, around) => {
  const WIDTH = 20;
  const reference = coarseReference(characterOf(70, 1), WIDTH, around);
  const scan = characterOf(60, 2);

  it('is the same by transforms of two windows at once and place by place', () => {
    const { low, end } = placesOf(reference);
    const starts = [0, 17, 40];
    evidenceOfWindows(scan, reference, starts).forEach((evidence, w) => {
      const near = evidenceNear(scan, reference, starts[w], low, end - low);
      evidence.forEach((value, k) => expect(value).toBeCloseTo(near[k], 8));
    });
  });

  it('gives the path that gathers most of it, by every lag tried from every lag', () => {
    const path = coarsePath(scan, reference, (lag) => -0.01 * lag * lag, 3, ALIGNMENT);
    expect(path.evidence).toBeCloseTo(slowBest(scan, reference, path.centres.map((centre) => centre - WIDTH / 2), around), 6);
  });
});

/** Dynamic programming with every change of lag written out. */
function slowBest(scan: Character, reference: ReturnType<typeof coarseReference>, starts: readonly number[], around: boolean): number {
  const size = reference.character.length;
  const lowest = around ? 0 : -scan.length + 1;
  const count = around ? size : scan.length + size - 1;
  const { low, end } = placesOf(reference);
  let best = Array.from({ length: count }, (_, l) => -0.01 * ((lowest + l) * scan.bin) ** 2);
  starts.forEach((start, w) => {
    const said = evidenceNear(scan, reference, start, low, end - low);
    const change = w === 0 ? null : lagChange((start - starts[w - 1]) * scan.bin, scan.bin, ALIGNMENT);
    best = best.map((stay, l) => {
      const at = around ? modulo(lowest + l + start, size) : lowest + l + start;
      let most = stay;
      for (let d = change === null ? 1 : -change.slip; change !== null && d <= change.slip; d += 1) {
        const from = around ? modulo(l + d, count) : l + d;
        if (from >= 0 && from < count) most = Math.max(most, best[from] - (Math.abs(d) > change.free ? ALIGNMENT.slipCost : 0));
      }
      return most + (at >= low && at < end ? said[at - low] : 0);
    });
  });
  return Math.max(...best);
}

describe('walking along stretches', () => {
  it('finds the stretch that holds a place, whatever was asked before', () => {
    fc.assert(fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 50 }), { minLength: 1, maxLength: 8 }), fc.array(fc.integer({ min: -5, max: 60 })), (drawn, asked) => {
      const ends = [...drawn].sort((a, b) => a - b);
      const indexAt = walkAlong(ends);
      for (const x of asked) {
        const found = ends.findIndex((end) => x < end);
        expect(indexAt(x)).toBe(found < 0 ? ends.length - 1 : found);
      }
    }));
  });
});
