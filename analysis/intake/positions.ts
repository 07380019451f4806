import { METRES_PER_FOOT } from '../rope/units.ts';
import { COUNT_UNITS, LENGTH_UNITS, SPEED_UNITS, TIME_UNITS, normaliseUnit } from './column-words.ts';
import type { ColumnGuess } from './run.ts';
import type { RunColumns } from '../rope/record.ts';

/** What turns written positions into metres: a factor, why, and how sure. */
export interface PositionUnit {
  readonly unit: string;
  /** Metres of one unit; below 1 its inverse is a whole number where it can be, so that division rounds only once. */
  readonly metres: number;
  readonly reason: string;
  readonly certainty: number;
}

interface Hints {
  readonly guess: ColumnGuess;
  readonly stated: RunColumns | undefined;
  readonly ropeLength: number | null;
  readonly preamble: readonly string[];
}

/**
 * Unit of the position column: stated, else in the header, else in the preamble, else by the length of the rope,
 * else by a plausible step. Null where counts come without pulses per metre.
 */
export function positionUnit(values: Float64Array, rows: number, hints: Hints): PositionUnit | null {
  const pulses = hints.stated?.position?.pulses_per_metre;
  const stated = hints.stated?.position?.unit;
  const written = stated ?? hints.guess.unit;
  const unit = normaliseUnit(written);
  if (COUNT_UNITS.has(unit) || (written === '' && pulses !== undefined)) {
    return pulses === undefined ? null : { unit: 'counts', metres: 1 / pulses, reason: `${pulses} pulses per metre as stated`, certainty: 1 };
  }
  if (unit in LENGTH_UNITS) return { unit, metres: LENGTH_UNITS[unit], reason: stated ? 'unit stated in the record' : `unit ${written} in the header`, certainty: stated ? 1 : 0.98 };
  const line = hints.preamble.find((text) => /(unit|einheit|unité|unità|unidad|jednost|единиц|单位|position|distance|length)/i.test(text) && /\b(ft|feet|foot|mm)\b/i.test(text));
  if (line !== undefined) return { unit: /\bmm\b/i.test(line) ? 'mm' : 'ft', metres: /\bmm\b/i.test(line) ? 0.001 : METRES_PER_FOOT, reason: `the lines above the table say so: ${line.trim().slice(0, 60)}`, certainty: 0.8 };
  return unitBySize(values, rows, hints.ropeLength);
}

function unitBySize(values: Float64Array, rows: number, ropeLength: number | null): PositionUnit {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < rows; i += 1) {
    if (values[i] < low) low = values[i];
    if (values[i] > high) high = values[i];
  }
  const span = high - low;
  if (ropeLength !== null && span > 0) {
    for (const [unit, metres] of [['m', 1], ['ft', METRES_PER_FOOT], ['mm', 0.001], ['cm', 0.01]] as const) {
      if (Math.abs((span * metres) / ropeLength - 1) < 0.05) return { unit, metres, reason: `${span.toPrecision(6)} ${unit} is the length of the rope in the record`, certainty: 0.9 };
    }
  }
  const step = span / Math.max(1, rows - 1);
  if (step >= 0.5 && step <= 50 && span > 2000) return { unit: 'mm', metres: 0.001, reason: `a mean step of ${step.toPrecision(3)} is usual in mm and far too long in m`, certainty: 0.6 };
  return { unit: 'm', metres: 1, reason: 'no unit is given: taken as metres', certainty: ropeLength === null ? 0.6 : 0.45 };
}

/** Turns written positions into metres in place. Feet are exact by the agreement of 1959; parts of a metre are divided, not multiplied, so the result is rounded once. */
export function toMetres(values: Float64Array, rows: number, metres: number): void {
  if (metres === 1) return;
  const parts = 1 / metres;
  const whole = metres < 1 && metres !== METRES_PER_FOOT && metres !== 0.0254 ? (Math.abs(parts - Math.round(parts)) < 1e-9 * parts ? Math.round(parts) : parts) : 0;
  for (let i = 0; i < rows; i += 1) values[i] = whole > 0 ? values[i] / whole : values[i] * metres;
}

/** Factor to m/s of a speed column: by its unit, else m/s. */
export function speedFactor(unit: string): { readonly factor: number; readonly known: boolean } {
  const factor = SPEED_UNITS[normaliseUnit(unit)];
  return factor === undefined ? { factor: 1, known: false } : { factor, known: true };
}

/** Factor to seconds of a time column: by its unit, else seconds. */
export function timeFactor(unit: string): { readonly factor: number; readonly known: boolean } {
  const factor = TIME_UNITS[normaliseUnit(unit)];
  return factor === undefined ? { factor: 1, known: false } : { factor, known: true };
}

/** Position in metres from time (s) and speed (m/s) by the trapezoid rule; a step without both adds nothing and is counted. */
export function integrateSpeed(time: Float64Array, speed: Float64Array, rows: number): { readonly position: Float64Array; readonly unknownSteps: number } {
  const position = new Float64Array(rows);
  let unknownSteps = 0;
  for (let i = 1; i < rows; i += 1) {
    const step = ((speed[i] + speed[i - 1]) / 2) * (time[i] - time[i - 1]);
    if (Number.isFinite(step)) position[i] = position[i - 1] + step;
    else {
      position[i] = position[i - 1];
      unknownSteps += 1;
    }
  }
  return { position, unknownSteps };
}
