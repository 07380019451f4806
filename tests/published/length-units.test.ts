import { describe, expect, it } from 'vitest';
import { LENGTH_UNITS, SPEED_UNITS } from '../../analysis/intake/column-words.ts';
import { METRES_PER_FOOT } from '../../analysis/rope/units.ts';
import { positionAt } from '../../analysis/rope/trace.ts';
import { runOf } from '../support/run-of.ts';

/**
 * International yard and pound agreement of 1 July 1959: one yard is exactly 0.9144 m. From it the foot is exactly 0.3048 m
 * and the inch exactly 25.4 mm (also NIST Special Publication 811, appendix B).
 */
describe('length units against their definitions', () => {
  it.each([['yd', 0.9144], ['ft', 0.9144 / 3], ['in', 0.9144 / 36], ['m', 1], ['mm', 1e-3], ['cm', 1e-2], ['km', 1e3]])('%s', (unit, metres) => expect(LENGTH_UNITS[unit]).toBeCloseTo(metres, 15));
  it('the foot is exact', () => {
    expect(METRES_PER_FOOT).toBe(0.3048);
    expect(LENGTH_UNITS.ft).toBe(0.3048);
  });
  it.each([['ft/min', 0.3048 / 60], ['km/h', 1000 / 3600], ['m/min', 1 / 60], ['ft/s', 0.3048]])('speed in %s', (unit, factor) => expect(SPEED_UNITS[unit]).toBeCloseTo(factor, 15));

  const rows = (position: (i: number) => string) => Array.from({ length: 2001 }, (_, i) => `${position(i)},${(0.1 * Math.sin(i)).toFixed(4)},${(3 * Math.cos(7.3 * i)).toFixed(3)}`).join('\n');
  it('5280 feet, one mile, are 1609.344 m in a file', async () => {
    const { trace } = await runOf(`Position [ft],LMA [%],LF\n${rows((i) => (i * 2.64).toFixed(2))}\n`);
    expect(positionAt(trace, trace.length - 1)).toBeCloseTo(1609.344, 9);
  });
  it('positions in mm are divided once, not multiplied by a rounded thousandth', async () => {
    const { trace } = await runOf(`Position [mm],LMA [%],LF\n${rows((i) => String(i * 7))}\n`);
    expect(trace.step).toBe(0.007);
    expect(positionAt(trace, trace.length - 1)).toBe(14);
  });
});
