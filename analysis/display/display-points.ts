/**
 * What a strip draws of one channel: the lowest and the highest value under each point of the drawing.
 * The brand keeps it out of every computation: no function of the analysis accepts it, and its numbers are no longer samples.
 */
declare const forDrawing: unique symbol;

export interface DisplayPoints {
  readonly [forDrawing]: true;
  /** Centre of each point, metres, rising evenly. */
  readonly positions: Float64Array;
  readonly low: Float32Array;
  readonly high: Float32Array;
  /** 0: nothing valid under this point; 1: part of it; 2: all of it. Values under a 0 mean nothing. */
  readonly seen: Uint8Array;
  /** How many samples stand behind each point; 1 where the drawing shows the samples themselves. */
  readonly samplesPerPoint: number;
}

/** Only the pyramid makes these. */
export function asDisplayPoints(parts: { positions: Float64Array; low: Float32Array; high: Float32Array; seen: Uint8Array; samplesPerPoint: number }): DisplayPoints {
  return parts as unknown as DisplayPoints;
}
