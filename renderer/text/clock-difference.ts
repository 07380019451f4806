/** Seconds that a difference of clocks means: `35`, `-2.5`, `1:05` (minutes), `-1:00:00` (hours); null where the text is none. */
export function clockDifference(text: string): number | null {
  const found = /^([+-]?)(?:(?:(\d{1,3}):)?(\d{1,2}):)?(\d+(?:[.,]\d+)?)$/.exec(text.trim().replace('−', '-'));
  if (!found) return null;
  const [, sign, hours = '0', minutes = '0', seconds] = found;
  const value = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds.replace(',', '.'));
  return sign === '-' && value !== 0 ? -value : value;
}
