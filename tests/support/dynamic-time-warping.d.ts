declare module 'dynamic-time-warping' {
  /** Plain dynamic time warping of two series (MIT). */
  export default class DynamicTimeWarping {
    constructor(first: readonly number[], second: readonly number[], distance: (a: number, b: number) => number);
    getDistance(): number;
    /** Pairs of indices, first series and second, from the start to the end. */
    getPath(): [number, number][];
  }
}
