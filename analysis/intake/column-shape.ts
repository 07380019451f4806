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
    constant: moved === 0, smoothness: neighbourCorrelation(values),
  };
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
