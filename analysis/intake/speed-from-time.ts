import type { Channel } from '../rope/trace.ts';

/** Speed in m/s from the time at each grid position, over one metre: shorter lengths would only show the rounding of the clock. Null without a time. */
export function speedFromTime(time: Channel | null, step: number, seconds: number): Channel | null {
  if (!time) return null;
  const reach = Math.max(1, Math.round(0.5 / step));
  const length = time.values.length;
  const values = new Float64Array(length);
  const valid = new Uint8Array(length);
  for (let i = 0; i < length; i += 1) {
    const a = Math.max(0, i - reach);
    const b = Math.min(length - 1, i + reach);
    if (time.valid[a] === 0 || time.valid[b] === 0) continue;
    const passed = Math.abs(time.values[b] - time.values[a]) * seconds;
    if (passed <= 0) continue;
    values[i] = ((b - a) * step) / passed;
    valid[i] = 1;
  }
  return { values, valid };
}
