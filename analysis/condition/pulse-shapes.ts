/**
 * Forms of an LF pulse about its break, peak 1, over u = x / r with r the distance of the sensor: `axial` and `radial` are the
 * fields of a small gap as a dipole (magnetostatics, Zatsepin and Shcherbinin 1966): one peak with shallow lobes, and a
 * positive and a negative peak; `coil` is the slope of the axial field, which a coil reads. `bell` is a peak without lobes, `slope` its derivative, `hat` its second derivative:
 * what coils, pairs of coils and low-pass filters make of the fields. The break stands at u = 0 in all of them.
 */
export type PulseShape = 'bell' | 'axial' | 'hat' | 'radial' | 'slope' | 'coil';

export const PULSE_SHAPES: readonly PulseShape[] = ['bell', 'axial', 'hat', 'radial', 'slope', 'coil'];

/** Full width at half height of the axial pulse over r; the scale of every form is set by it. */
export const AXIAL_WIDTH = 0.7679;

const RADIAL_PEAK = 0.5 / 1.25 ** 2.5;
const coilSlope = (u: number, square: number): number => (u * (9 - 6 * square)) / (1 + square) ** 3.5;
/** Where the slope of the axial field is steepest: 24 u^4 - 72 u^2 + 9 = 0. */
const COIL_PEAK_SQUARE = (72 - Math.sqrt(72 * 72 - 4 * 24 * 9)) / 48;
const COIL_PEAK = coilSlope(Math.sqrt(COIL_PEAK_SQUARE), COIL_PEAK_SQUARE);
/** Standard deviation of a bell over its full width at half height. */
const BELL_SIGMA = 1 / (2 * Math.sqrt(2 * Math.LN2));

export function isOdd(shape: PulseShape): boolean {
  return shape === 'radial' || shape === 'slope' || shape === 'coil';
}

/**
 * Value at distance x from the break of a pulse of scale `width` (metres, full width at half height of the axial or bell
 * form; for odd forms the scale of the same sensor distance). Peak 1; odd forms positive behind the break (x > 0).
 */
export function pulseAt(shape: PulseShape, x: number, width: number): number {
  const u = (x / width) * AXIAL_WIDTH;
  const square = u * u;
  if (shape === 'axial') return (1 - 2 * square) / (1 + square) ** 2.5;
  if (shape === 'radial') return u / (1 + square) ** 2.5 / RADIAL_PEAK;
  if (shape === 'coil') return coilSlope(u, square) / COIL_PEAK;
  const z = x / (width * BELL_SIGMA);
  if (shape === 'bell') return Math.exp(-0.5 * z * z);
  if (shape === 'slope') return z * Math.exp(0.5 - 0.5 * z * z);
  // The hat is drawn out so that it too is `width` wide at half its height.
  const wide = z * HAT_STRETCH;
  return (1 - wide * wide) * Math.exp(-0.5 * wide * wide);
}

/** Half height of (1 - z^2) exp(-z^2 / 2) lies at z = 0.6259; that of the bell at 1.1774. */
const HAT_STRETCH = 0.6259 / 1.1774;

/** Full width at half height of the pulse's main peak for scale `width`: the scale itself, or that of one lobe of an odd form. */
export function widthOf(shape: PulseShape, width: number): number {
  if (shape === 'radial') return width * 1.282;
  if (shape === 'slope') return width * 0.681;
  if (shape === 'coil') return width * 0.797;
  return width;
}

const TABLE_REACH = 6;
const TABLE_STEPS = 512; // a width
const tables = new Map<PulseShape, Float64Array>();

/** Values of a form at distances from 0 to six widths, TABLE_STEPS a width: fitting asks for them by the million. */
function tableOf(shape: PulseShape): Float64Array {
  let table = tables.get(shape);
  if (!table) {
    table = Float64Array.from({ length: TABLE_REACH * TABLE_STEPS + 2 }, (_, i) => pulseAt(shape, i / TABLE_STEPS, 1));
    tables.set(shape, table);
  }
  return table;
}

/** pulseAt of `shape` and `width` as a function of distance, from the table: within 1e-5 of it, and 0 beyond six widths. */
export function pulseOf(shape: PulseShape, width: number): (x: number) => number {
  const table = tableOf(shape);
  const sign = isOdd(shape) ? -1 : 1;
  const scale = TABLE_STEPS / width;
  const last = TABLE_REACH * TABLE_STEPS;
  return (x) => {
    const place = x < 0 ? -x * scale : x * scale;
    if (place >= last) return 0;
    const below = place | 0;
    const value = table[below] + (place - below) * (table[below + 1] - table[below]);
    return x < 0 ? sign * value : value;
  };
}
