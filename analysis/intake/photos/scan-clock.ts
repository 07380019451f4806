import { measuredPosition } from '../../rope/units.ts';
import type { MeasuredPosition } from '../../rope/units.ts';

/**
 * Where the head stood when, from a scan that tells the time: seconds of the instrument's clock since 1970, never falling,
 * against the file's own positions in metres. Thinned to a point each half second and each half metre.
 */
export interface ScanClock {
  readonly seconds: Float64Array;
  readonly positions: Float64Array;
  /** What gives the day and the time of day. */
  readonly basis: string;
}

/** How the times of a file are to be read. */
export interface TimeReading {
  /** Seconds of one unit as written. */
  readonly factor: number;
  /** ISO date of the inspection, for a file that tells only the time of day. */
  readonly date: string;
  /** Lines above the table, where the start of the scan may stand. */
  readonly preamble: readonly string[];
  /** True where the cells are times of day or dates with times, not numbers. */
  readonly written: boolean;
}

const DAY = 86_400;
/** Numbers above this count seconds since 1970: the year 1990. */
const LEAST_EPOCH = 631_152_000;
const KEPT_SECONDS = 0.5;
const KEPT_METRES = 0.5;

/**
 * The clock of a scan, from its times and positions (metres) in the order of its rows. Null where nothing tells at which
 * time of day the scan began: then no photo can be held against it. Linear time.
 */
export function scanClock(times: Float64Array, positions: Float64Array, rows: number, reading: TimeReading): ScanClock | null {
  const first = times.subarray(0, rows).find((value) => Number.isFinite(value));
  if (first === undefined) return null;
  const origin = originOf(first * reading.factor, reading);
  if (origin === null) return null;
  const seconds: number[] = [];
  const places: number[] = [];
  let days = 0;
  for (let row = 0; row < rows; row += 1) {
    const last = seconds[seconds.length - 1] ?? -Infinity;
    const time = times[row] * reading.factor + origin.seconds + days;
    if (!Number.isFinite(time) || !Number.isFinite(positions[row])) continue;
    const passesMidnight = reading.written && last - time > DAY / 2;
    const now = passesMidnight ? time + DAY : time;
    if (passesMidnight) days += DAY;
    if (now < last) continue;
    if (seconds.length > 0 && row < rows - 1 && now - last < KEPT_SECONDS && Math.abs(positions[row] - places[places.length - 1]) < KEPT_METRES) continue;
    seconds.push(now);
    places.push(positions[row]);
  }
  return { seconds: Float64Array.from(seconds), positions: Float64Array.from(places), basis: origin.basis };
}

/** What is to be added to the file's own seconds to have them count from 1970, and why. */
function originOf(first: number, { date, preamble, written }: TimeReading): { seconds: number; basis: string } | null {
  if (first >= LEAST_EPOCH) return { seconds: 0, basis: 'dates and times of the file' };
  const day = Date.parse(date.slice(0, 10)) / 1000;
  if (written) return { seconds: day, basis: 'times of day of the file, on the day of the inspection' };
  const start = startInPreamble(preamble, day);
  return start === null ? null : { seconds: start.seconds - first, basis: `start of the scan as written above its table: ${start.line}` };
}

const START = /(?<!\p{L})(start|begin|beginn|anfang|début|debut|inizio|inicio|początek|начало|date|datum|data|fecha|time|zeit|uhrzeit|heure|ora|hora|czas|дата|время)(?!\p{L})|开始|日期|时间/iu;
/** Moments of something other than the start. */
const ELSE = /(?<!\p{L})(export|report|print|creat|install|calibrat|kalibr|stop|end|fin)/iu;
const MOMENT = /(?:(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}))[T ,;]+(\d{1,2}):(\d{2})(?::(\d{2}))?/;
const TIME = /(?:^|[^\d:])(\d{1,2}):(\d{2}):(\d{2})(?![\d:])/;

/** The moment that a line of the preamble gives for the start; only one of the inspection's own day is believed. */
function startInPreamble(preamble: readonly string[], day: number): { seconds: number; line: string } | null {
  const lines = preamble.filter((line) => START.test(line.replace(/_/g, ' ')) && !ELSE.test(line));
  for (const line of lines) {
    const found = MOMENT.exec(line);
    if (!found) continue;
    const [, year, month, date, first, second, year2, hours, minutes, seconds] = found;
    const days = year !== undefined ? [Date.UTC(+year, +month - 1, +date)] : [Date.UTC(+year2, +second - 1, +first), Date.UTC(+year2, +first - 1, +second)];
    if (days.some((each) => each / 1000 === day)) return { seconds: day + secondsOf(hours, minutes, seconds), line: line.trim() };
  }
  for (const line of lines) {
    const found = TIME.exec(line);
    if (found && !MOMENT.test(line)) return { seconds: day + secondsOf(found[1], found[2], found[3]), line: line.trim() };
  }
  return null;
}

function secondsOf(hours: string, minutes: string, seconds: string | undefined): number {
  return Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds ?? 0);
}

/** Longest step between two points of the clock over which the head may have gone anywhere, seconds, and way it may then have made, metres. */
const GAP_SECONDS = 10;
const GAP_METRES = 0.5;
/** How far outside the scan a moment may lie and still be its end: the resolution of a camera's clock. */
const END_SECONDS = 1;

/** Where the head stood between two moments, or in words why nobody can say. Middle and half width, metres of the file. */
export function headAt(clock: ScanClock, from: number, to: number): { readonly position: MeasuredPosition; readonly within: number } | { readonly why: string } {
  const ends = [from, to].map((second) => positionAt(clock, second));
  const missing = ends.find((each) => typeof each === 'string');
  if (typeof missing === 'string') return { why: missing };
  const inside = clock.positions.subarray(firstAfter(clock.seconds, from), firstAfter(clock.seconds, to));
  const all = [...(ends as number[]), ...inside];
  const low = Math.min(...all);
  const high = Math.max(...all);
  return { position: measuredPosition((low + high) / 2), within: (high - low) / 2 };
}

function positionAt({ seconds, positions }: ScanClock, second: number): number | string {
  const last = seconds.length - 1;
  if (last < 0) return 'the scan tells no time';
  if (second < seconds[0]) return seconds[0] - second <= END_SECONDS ? positions[0] : `${duration(seconds[0] - second)} before the scan began`;
  if (second > seconds[last]) return second - seconds[last] <= END_SECONDS ? positions[last] : `${duration(second - seconds[last])} after the scan ended`;
  const after = firstAfter(seconds, second);
  const before = after - 1;
  if (after > last) return positions[last];
  const way = positions[after] - positions[before];
  const time = seconds[after] - seconds[before];
  if (time > GAP_SECONDS && Math.abs(way) > GAP_METRES) return `in a gap of ${duration(time)} of the scan`;
  return positions[before] + way * ((second - seconds[before]) / time);
}

/** Index of the first point later than a moment. */
function firstAfter(seconds: Float64Array, second: number): number {
  let low = 0;
  let high = seconds.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (seconds[middle] <= second) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** `2 h 05 min`, `12 min`, `45 s`. */
function duration(seconds: number): string {
  if (seconds >= 2 * DAY) return `${Math.round(seconds / DAY)} days`;
  const minutes = Math.floor(seconds / 60);
  if (minutes >= 60) return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
  return minutes >= 2 ? `${minutes} min` : `${Math.max(1, Math.round(seconds))} s`;
}
