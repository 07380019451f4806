/** Colours that a chart cannot take from the style sheet; the same as there. */
const INK = {
  light: { strong: '#1d2427', soft: '#48535a', line: '#8d9496', grid: '#e2ded3', sheet: '#fffefa' },
  dark: { strong: '#eef0ea', soft: '#b9c2c4', line: '#69767c', grid: '#2c363b', sheet: '#1b2226' },
} as const;

export function inkOf(theme: 'light' | 'dark') {
  return INK[theme];
}

/** Colours after Okabe and Ito, told apart with any colour vision; never used without a shape or a word beside them. */
export const OKABE_ITO = { orange: '#e69f00', sky: '#56b4e9', green: '#009e73', yellow: '#f0e442', blue: '#0072b2', vermilion: '#d55e00', purple: '#cc79a7' } as const;
