export type PulseModel = 'gauss' | 'lorentz' | 'coil' | 'gauss-slope' | 'hat' | 'squared-lorentz';

/** Value of a pulse with peak 1 at x metres from the break; `width` is the full width at half height of the hump it is made from. */
export function pulse(model: PulseModel, x: number, width: number): number {
  const u = x / width;
  const bell = Math.exp(-4 * Math.LN2 * u * u);
  switch (model) {
    case 'gauss': return bell;
    case 'lorentz': return 1 / (1 + 4 * u * u);
    case 'squared-lorentz': return 1 / (1 + 4 * (Math.SQRT2 - 1) * u * u) ** 2;
    // The slope of a Lorentz hump, as a coil gives it, scaled to extremes of 1.
    case 'coil': return (2 * u) / (1 + 4 * u * u) ** 2 / 0.32476;
    case 'gauss-slope': return u * bell * 3.8822;
    case 'hat': return (1 - 8 * Math.LN2 * u * u) * bell;
  }
}

/** Metres beyond which a pulse is less than a few thousandths of its peak. */
export const reachOf = (model: PulseModel, width: number): number => (model === 'lorentz' ? 12 : model === 'coil' || model === 'squared-lorentz' ? 6 : 2.2) * width;
