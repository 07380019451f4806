import { expect, test } from 'vitest';
import type { JournalEntry } from '../../analysis/rope/journal.ts';
import { reviewOf } from '../../renderer/jobs/place-review.ts';

const review = (from_m: number, to_m: number, verdict: 'accepted' | 'set-aside' | 'withdrawn' = 'accepted'): JournalEntry => ({ kind: 'place-review', at: '2026-01-01T00:00:00Z', who: 'A', from_m, to_m, verdict, reason: '' });

test('a review of a zone is none of the faults inside it, nor the other way round', () => {
  expect(reviewOf([review(300, 312)], { from: 311.7, to: 311.73 })).toBeNull();
  expect(reviewOf([review(311.7, 311.73)], { from: 300, to: 312 })).toBeNull();
  expect(reviewOf([review(300, 312)], { from: 299.5, to: 312.6 })).not.toBeNull();
});

test('a review follows a fault that is found a few centimetres on, not the next fault', () => {
  expect(reviewOf([review(50, 50.02)], { from: 50.03, to: 50.05 })).not.toBeNull();
  expect(reviewOf([review(50, 50.02)], { from: 50.2, to: 50.22 })).toBeNull();
});

test('a place that has more than doubled is to be looked at anew, and a withdrawn review holds no more', () => {
  expect(reviewOf([review(20, 25)], { from: 20, to: 31 })).toBeNull();
  expect(reviewOf([review(20, 25), review(20, 25, 'withdrawn')], { from: 20, to: 25 })).toBeNull();
});
