import { expect, test } from 'vitest';
import { intervalShare } from '../../analysis/life/interval-share.ts';

test('the share of the life left is the usual half unless a user sets another, within its range', () => {
  expect(intervalShare(undefined)).toBe(0.5);
  expect(intervalShare({ nextInspectionShare: 0.3 })).toBe(0.3);
  expect(intervalShare({ nextInspectionShare: 7 })).toBe(1);
  expect(intervalShare({ nextInspectionShare: 0 })).toBe(0.1);
  expect(intervalShare({ nextInspectionShare: NaN })).toBe(0.5);
});
