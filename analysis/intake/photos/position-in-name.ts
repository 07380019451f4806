import { LENGTH_UNITS } from '../column-words.ts';
import { IMAGE_ENDING } from '../image-kind.ts';

const NAME_PATTERNS: readonly { readonly pattern: RegExp; readonly factor: number; readonly why: string }[] = [
  { pattern: /(?:^|[^a-z0-9])(?:pos(?:ition)?|at|x)[ _=-]*(-?\d+(?:[.,]\d+)?)(?![\d.,]*\d)/i, factor: 1, why: 'position in its name' },
  { pattern: /(?:^|[^a-z0-9.])(\d+(?:[.,]\d+)?)[ _-]?m(?![a-z0-9])/i, factor: 1, why: 'metres in its name' },
  { pattern: /(?:^|[^a-z0-9.])(\d+)m(\d{1,3})(?!\d)/i, factor: 1, why: 'metres in its name' },
  { pattern: /(?:^|[^a-z0-9.])(\d+(?:[.,]\d+)?)[ _-]?(?:ft|feet)(?![a-z0-9])/i, factor: LENGTH_UNITS.ft, why: 'feet in its name' },
];

/** Position that a file name speaks of: `123.4m`, `pos_0123.40`, `12m50`, `400ft`; metres, or null. */
export function positionInName(file: string): { readonly position: number; readonly why: string } | null {
  const base = (file.split('/').pop() ?? '').replace(IMAGE_ENDING, '');
  for (const { pattern, factor, why } of NAME_PATTERNS) {
    const found = pattern.exec(base);
    if (!found) continue;
    const text = found[2] !== undefined ? `${found[1]}.${found[2]}` : found[1].replace(',', '.');
    return { position: Number(text) * factor, why };
  }
  return null;
}
