/** Viridis, at even steps: readable with any colour vision, and in grey by its lightness alone. */
const VIRIDIS = ['#440154', '#482878', '#3e4989', '#31688e', '#26828e', '#1f9e89', '#35b779', '#6ece58', '#b5de2b', '#fde725'] as const;

/** One colour for each inspection, oldest first; the newest stands out most against the sheet. */
export function yearColours(count: number, theme: 'light' | 'dark'): string[] {
  const [oldest, newest] = theme === 'light' ? [0.56, 0] : [0.3, 1];
  return Array.from({ length: count }, (_, i) => viridis(count < 2 ? newest : oldest + ((newest - oldest) * i) / (count - 1)));
}

/** Two inspections over each other: far apart in lightness as well as in hue. */
export function pairColours(theme: 'light' | 'dark'): { earlier: string; later: string } {
  return theme === 'light' ? { earlier: '#e69f00', later: '#2b2a6b' } : { earlier: '#0072b2', later: '#f0e442' };
}

function viridis(share: number): string {
  const at = share * (VIRIDIS.length - 1);
  const left = Math.min(VIRIDIS.length - 2, Math.floor(at));
  return mixed(VIRIDIS[left], VIRIDIS[left + 1], at - left);
}

function mixed(a: string, b: string, share: number): string {
  const channel = (colour: string, i: number) => parseInt(colour.slice(1 + 2 * i, 3 + 2 * i), 16);
  return `#${[0, 1, 2].map((i) => Math.round(channel(a, i) + (channel(b, i) - channel(a, i)) * share).toString(16).padStart(2, '0')).join('')}`;
}
