/** Offset (-0.5..0.5) of the summit of the parabola through three equally spaced values, the middle one the largest. */
export function parabolicOffset(before: number, at: number, after: number): number {
  const bend = before - 2 * at + after;
  if (bend >= 0) return 0;
  return Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend)));
}
