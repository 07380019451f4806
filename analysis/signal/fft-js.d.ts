/** The part of fft.js that we use; the package carries no types. Sizes are powers of two from 2. */
declare module 'fft.js' {
  export default class FFT {
    constructor(size: number);
    readonly size: number;
    transform(out: Float64Array, data: Float64Array): void;
    realTransform(out: Float64Array, data: Float64Array): void;
    inverseTransform(out: Float64Array, data: Float64Array): void;
    completeSpectrum(spectrum: Float64Array): void;
  }
}
