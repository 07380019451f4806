import type { Dialect } from './dialect.ts';
import { parseClock, parseNumber } from './parse-cell.ts';

/** What the numbers of one column look like in the first part of a file. */
export interface ColumnShape {
  readonly index: number;
  /** Cells that are numbers or clock times. */
  readonly numbers: number;
  /** Values rise (or fall) nearly throughout: a position, a time or a row number. */
  readonly ordered: boolean;
  /** Ordered with steps that are all alike. */
  readonly even: boolean;
  readonly constant: boolean;
  /** Correlation of neighbouring samples, -1..1: near 1 for an averaged signal. */
  readonly smoothness: number;
  /** Share of the variance that means over 64 samples keep, 0..1: large where lengths of rope differ, small for noise and pulses. */
  readonly slowness: number;
  /** All values above zero and within a narrow band about their mean, as the speed of a steady run. */
  readonly steady: boolean;
}

export function shapesOf(dialect: Dialect): ColumnShape[] {
  return Array.from({ length: dialect.fieldCount }, (_, index) => {
    const values: number[] = [];
    for (const row of dialect.sample) {
      const cell = row[index] ?? '';
      const value = parseNumber(cell, dialect.decimal) ?? parseClock(cell);
      if (value !== null) values.push(value);
    }
    return shapeOf(index, values);
  });
}

function shapeOf(index: number, values: readonly number[]): ColumnShape {
  let rises = 0;
  let falls = 0;
  let smallest = Infinity;
  let largest = -Infinity;
  for (let i = 1; i < values.length; i += 1) {
    const step = values[i] - values[i - 1];
    if (step > 0) rises += 1;
    if (step < 0) falls += 1;
    if (step < smallest) smallest = step;
    if (step > largest) largest = step;
  }
  const steps = Math.max(1, values.length - 1);
  const moved = rises + falls;
  const ordered = moved > 0.3 * steps && moved > 0 && Math.max(rises, falls) >= 0.95 * moved && values.length >= 3;
  const mean = (largest + smallest) / 2;
  return {
    index, numbers: values.length, ordered, even: ordered && largest - smallest <= 0.02 * Math.abs(mean) + 1e-9,
    constant: moved === 0, smoothness: neighbourCorrelation(values), slowness: slowShare(values, 64), steady: isSteady(values),
  };
}

/** A test speed lies between some centimetres and some metres a second; a steady run keeps within a third of its mean. */
function isSteady(values: readonly number[]): boolean {
  if (values.length < 3 || values.some((value) => value < 0)) return false;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
  return mean > 0.02 && mean < 10 && spread < 0.33 * mean;
}

function neighbourCorrelation(values: readonly number[]): number {
  if (values.length < 3) return 0;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  let variance = 0;
  let product = 0;
  for (let i = 0; i < values.length; i += 1) {
    variance += (values[i] - mean) ** 2;
    if (i > 0) product += (values[i] - mean) * (values[i - 1] - mean);
  }
  return variance === 0 ? 0 : product / variance;
}

function slowShare(values: readonly number[], block: number): number {
  const whole = Math.floor(values.length / block) * block;
  if (whole < 4 * block) return 0;
  const mean = values.slice(0, whole).reduce((sum, value) => sum + value, 0) / whole;
  let total = 0;
  let slow = 0;
  for (let at = 0; at < whole; at += block) {
    let sum = 0;
    for (let i = at; i < at + block; i += 1) {
      sum += values[i] - mean;
      total += (values[i] - mean) ** 2;
    }
    slow += (sum * sum) / block;
  }
  return total === 0 ? 0 : slow / total;
}
