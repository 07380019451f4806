/** Round positions for a ruler between two positions, at most `most` of them, and the decimals they need. */
export function axisSteps(from: number, to: number, most: number): { marks: number[]; decimals: number } {
  const raw = (to - from) / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= raw * 0.999999) ?? 10 * power;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  const marks: number[] = [];
  for (let i = first; i <= last; i += 1) marks.push(i * step);
  return { marks, decimals: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) };
}
