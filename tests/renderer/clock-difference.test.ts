import { expect, test } from 'vitest';
import { clockDifference } from '../../renderer/text/clock-difference.ts';

test.each([['35', 35], [' -2,5 ', -2.5], ['1:05', 65], ['-1:00:00', -3600], ['−0:30', -30], ['+2:00:00', 7200], ['0', 0], ['-0', 0]])('%s is a difference of clocks', (text, seconds) => expect(clockDifference(text)).toBe(seconds));
test.each([[''], ['an hour'], ['1:2:3:4'], ['--3'], ['1:5:'], ['12 s']])('"%s" is none', (text) => expect(clockDifference(text)).toBeNull());
