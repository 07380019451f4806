import type { Dialect } from './dialect.ts';
import type { ColumnGuess } from './run.ts';
import type { Problem } from '../rope/problem.ts';
import type { RunColumns } from '../rope/record.ts';
import { LENGTH_UNITS, SPEED_UNITS, TIME_UNITS, COUNT_UNITS, isArea, isPercent, looksLikeUnit, normaliseUnit, roleOfName, splitUnit } from './column-words.ts';
import type { Role } from './column-words.ts';
import { shapesOf } from './column-shape.ts';
import type { ColumnShape } from './column-shape.ts';

export interface Recognition {
  /** One guess for each column of the file, in its order. */
  readonly guesses: readonly ColumnGuess[];
  readonly columnOf: Readonly<Partial<Record<Role, number>>>;
  readonly problems: readonly Problem[];
}

interface Claim {
  readonly role: Role;
  readonly index: number;
  readonly certainty: number;
  readonly reason: string;
  readonly unit: string;
}

/**
 * Says what each column is: as stated in the record, else by its name, else by the shape of its numbers.
 * Problems are returned where a scan cannot be read without a guess that could as well be wrong.
 */
export function recogniseColumns(dialect: Dialect, stated: RunColumns | undefined, file: string): Recognition {
  const shapes = shapesOf(dialect);
  const problems: Problem[] = [];
  const claims = new Map<Role, Claim>();
  const taken = new Set<number>();
  const claim = (each: Claim) => {
    claims.set(each.role, each);
    taken.add(each.index);
  };
  for (const each of statedClaims(dialect, stated, file, problems)) claim(each);
  for (const each of namedClaims(dialect, shapes)) if (!claims.has(each.role) && !taken.has(each.index)) claim(each);
  for (const each of shapedClaims(dialect, shapes, claims, taken)) if (!claims.has(each.role) && !taken.has(each.index)) claim(each);
  if (problems.length === 0) problems.push(...whatIsMissing(dialect, claims, file));
  const columnOf: Partial<Record<Role, number>> = {};
  for (const each of claims.values()) columnOf[each.role] = each.index;
  return { guesses: dialect.names.map((name, index) => guessOf([...claims.values()].find((each) => each.index === index), name, index, dialect)), columnOf, problems };
}

function guessOf(found: Claim | undefined, name: string, index: number, dialect: Dialect): ColumnGuess {
  if (!found) return { role: 'unused', index, name, unit: dialect.units[index] ?? '', reason: 'not needed', certainty: 1 };
  return { role: found.role, index, name, unit: found.unit, reason: found.reason, certainty: found.certainty };
}

function statedClaims(dialect: Dialect, stated: RunColumns | undefined, file: string, problems: Problem[]): Claim[] {
  const claims: Claim[] = [];
  for (const role of ['position', 'lma', 'lf', 'speed', 'time'] as const) {
    const entry = stated?.[role];
    const name = typeof entry === 'string' ? entry : entry?.name;
    if (name === undefined) continue;
    const index = indexOfName(dialect, name);
    if (index === null) {
      problems.push({ file, line: dialect.headerLine, column: String(name), what: `the record names this column for ${role}, and the file has none of that name`, remedy: `use one of: ${dialect.names.slice(0, 12).join(', ')}` });
      continue;
    }
    claims.push({ role, index, certainty: 1, reason: 'named in the record', unit: (typeof entry === 'object' ? entry.unit : undefined) ?? unitFor(role, dialect, index) });
  }
  return claims;
}

/** Column by name (as written, or without unit, case and blanks) or by number; numbers count from 1. */
function indexOfName(dialect: Dialect, wanted: string | number): number | null {
  if (typeof wanted === 'number') return wanted >= 1 && wanted <= dialect.fieldCount ? wanted - 1 : null;
  const plain = (text: string) => text.toLowerCase().replace(/[\s_"]+/g, '');
  const tries: ((name: string) => boolean)[] = [
    (name) => name === wanted,
    (name) => plain(name) === plain(wanted),
    (name) => plain(splitUnit(name).name) === plain(splitUnit(wanted).name),
  ];
  for (const fits of tries) {
    const found = dialect.names.flatMap((name, index) => (fits(name) ? [index] : []));
    if (found.length === 1) return found[0];
    if (found.length > 1) return found[0];
  }
  return null;
}

function unitFor(role: Role, dialect: Dialect, index: number): string {
  // A header that is nothing but a unit, such as `ft` or `counts`, names its own.
  const unit = dialect.units[index] || (role === 'position' && looksLikeUnit(dialect.names[index]) ? dialect.names[index].trim() : '');
  const plain = normaliseUnit(unit);
  const fits = role === 'position' ? plain in LENGTH_UNITS || COUNT_UNITS.has(plain)
    : role === 'speed' ? plain in SPEED_UNITS
      : role === 'time' ? plain in TIME_UNITS
        : role === 'lma' ? isPercent(unit) || isArea(unit) : true;
  return fits ? unit : '';
}

/** Claims by name, surest first. Of several LF columns the first is taken; the reason says so. */
function namedClaims(dialect: Dialect, shapes: readonly ColumnShape[]): Claim[] {
  const claims: Claim[] = [];
  dialect.names.forEach((name, index) => {
    if (dialect.headerLine === null) return;
    const { name: bare } = splitUnit(name);
    const found = roleOfName(bare) ?? roleOfName(name);
    if (found === null || shapes[index].numbers === 0) return;
    const doubtful = found.role === 'position' && !shapes[index].ordered;
    claims.push({ role: found.role, index, certainty: doubtful ? Math.min(0.6, found.certainty) : found.certainty, reason: doubtful ? `${found.reason}, though its values do not run in order` : found.reason, unit: unitFor(found.role, dialect, index) });
  });
  return claims.sort((a, b) => b.certainty - a.certainty || a.index - b.index)
    .map((each) => (claims.filter((other) => other.role === each.role).length > 1 ? { ...each, reason: `${each.reason}; the first of several such columns` } : each));
}

/** Claims by shape, for files whose names say nothing. */
function shapedClaims(dialect: Dialect, shapes: readonly ColumnShape[], claims: ReadonlyMap<Role, Claim>, taken: ReadonlySet<number>): Claim[] {
  const free = shapes.filter((shape) => !taken.has(shape.index) && shape.numbers > 0);
  const found: Claim[] = [];
  const add = (role: Role, shape: ColumnShape | undefined, certainty: number, reason: string) => {
    if (shape) found.push({ role, index: shape.index, certainty, reason, unit: unitFor(role, dialect, shape.index) });
  };
  const ordered = free.filter((shape) => shape.ordered);
  if (!claims.has('position') && !(claims.has('time') && claims.has('speed'))) {
    const uneven = ordered.filter((shape) => !shape.even);
    if (ordered.length === 1) add('position', ordered[0], 0.8, 'the only column whose values run in order');
    else if (ordered.length === 2 && uneven.length === 1) {
      add('position', uneven[0], 0.6, 'runs in order with uneven steps, as an encoder does beside an even clock');
      add('time', ordered.find((shape) => shape.even), 0.6, 'runs in order with even steps, as a clock does');
    }
  }
  const used = new Set(found.map((each) => each.index));
  const signals = free.filter((shape) => !used.has(shape.index) && !shape.ordered && !shape.constant);
  const percent = signals.filter((shape) => isPercent(dialect.units[shape.index] ?? '') || isArea(dialect.units[shape.index] ?? ''));
  if (!claims.has('lma') && percent.length === 1) add('lma', percent[0], 0.75, 'the only free column in percent or mm2');
  const steady = signals.filter((shape) => shape.steady);
  if (!claims.has('speed') && signals.length > 2 && steady.length === 1) add('speed', steady[0], 0.6, 'above zero and steady, as a speed is');
  const rest = signals.filter((shape) => !found.some((each) => each.index === shape.index));
  if (!claims.has('lma') && !claims.has('lf') && percent.length !== 1 && rest.length === 2) {
    const [slow, quick] = [...rest].sort((a, b) => b.smoothness + b.slowness - a.smoothness - a.slowness);
    // Means over 64 samples of pure noise keep 1/64 of its variance; five times that is no chance.
    if (slow.smoothness - quick.smoothness > 0.25 || (slow.slowness > 0.08 && slow.slowness > 3 * quick.slowness)) {
      add('lma', slow, 0.65, 'the smoother of two signals: LMA is averaged over the length of the head');
      add('lf', quick, 0.65, 'the livelier of two signals, as a local-fault channel is');
    }
  }
  return found;
}

function whatIsMissing(dialect: Dialect, claims: ReadonlyMap<Role, Claim>, file: string): Problem[] {
  const names = dialect.headerLine === null ? `${dialect.fieldCount} columns without names` : dialect.names.slice(0, 12).join(', ');
  const problems: Problem[] = [];
  const line = dialect.headerLine ?? dialect.firstDataLine;
  if (!claims.has('position') && !(claims.has('time') && claims.has('speed'))) {
    problems.push({ file, line, column: null, what: `no column can be told to be the position, nor time and speed together (${names})`, remedy: 'state columns.position (or time and speed) of this run in record.json, or choose the column when importing' });
  }
  if (!claims.has('lma') && !claims.has('lf')) {
    problems.push({ file, line, column: null, what: `no column can be told to be LMA or LF (${names})`, remedy: 'state columns.lma or columns.lf of this run in record.json, or choose the columns when importing' });
  }
  return problems;
}
