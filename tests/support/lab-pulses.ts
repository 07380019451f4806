/** Pulse forms of the laboratory, peak 1, written with the half distance u = x / r from the physics of a break as a small dipole. */
export type PulseForm = 'axial' | 'radial' | 'bell' | 'bell-slope' | 'coil' | 'coil-difference' | 'lorentz' | 'narrow-hat';

const axial = (u: number) => (1 - 2 * u * u) / (1 + u * u) ** 2.5;
const radial = (u: number) => u / (1 + u * u) ** 2.5 / 0.28622;
const bell = (u: number) => Math.exp(-(u * u) * 4 * Math.LN2 / 0.768 ** 2);

const FORMS: Record<PulseForm, (u: number) => number> = {
  axial,
  radial,
  bell,
  'bell-slope': (u) => u * bell(u) * 4 * Math.sqrt(2 * Math.LN2) * Math.exp(0.5) / 0.768 / 2,
  coil: (u) => (axial(u + 0.02) - axial(u - 0.02)) / 0.04 / -1.9323,
  /** One peak with far-reaching shoulders, as wide at half its height as the others. */
  lorentz: (u) => 1 / (1 + (2 * u / 0.768) ** 2),
  /** Second derivative of the bell: its peak is half as wide as the bell's. */
  'narrow-hat': (u) => (1 - 8 * Math.LN2 * (u / 0.768) ** 2) * bell(u),
  'coil-difference': (u) => (2 * axial(u) - axial(u + 0.35) - axial(u - 0.35)) / 0.8689,
};

/** Value of a form at distance x (m) for a scale r (m): an axial pulse is 0.768 r wide at half its height. */
export function pulseValue(form: PulseForm, x: number, r: number): number {
  return FORMS[form](x / r);
}

export const isOdd = (form: PulseForm): boolean => form === 'radial' || form === 'bell-slope' || form === 'coil';
