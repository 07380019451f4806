import { drawRope } from '../files/draw-rope.ts';
import type { Scene } from '../files/draw-rope.ts';
import { encodePng } from '../files/png.ts';
import type { ScanPlan } from '../signal/rope-plan.ts';

/** A rope folder in memory: names relative to it, with '/'. */
export interface SampleFolder {
  readonly name: string;
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
}

/** Years of 365.25 days between two ISO dates. */
export function yearsBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / (365.25 * 86_400_000);
}

export function jsonBytes(value: unknown): Uint8Array {
  return new TextEncoder().encode(`${JSON.stringify(value, null, 2)}\n`);
}

export function photo(name: string, scene: Omit<Scene, 'name'>): { name: string; bytes: Uint8Array } {
  return { name, bytes: encodePng(drawRope({ ...scene, name })) };
}

/** First lines of every scan file. */
export function preambleOf(folder: string, date: string, more: readonly string[] = []): string[] {
  return [`SYNTHETIC - made by a generator, not a measurement of any rope`, `rope: ${folder} (invented)`, `date: ${date}`, ...more];
}

/** A scan of an even, careful kind; each rope changes what it needs. */
export const STEADY: Omit<ScanPlan, 'id' | 'years' | 'start' | 'passes' | 'firstReading'> = {
  step: 0.01, reversed: false, scaleError: 0, slips: [], gain: 1, zero: 0, drift: 0, lossNoise: 0.06, faultNoise: 7,
};
