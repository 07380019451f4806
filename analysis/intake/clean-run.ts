import type { Channel, Trace } from '../rope/trace.ts';
import { validIntervals } from '../rope/trace.ts';
import type { Interval } from '../rope/interval.ts';
import { measuredPosition } from '../rope/units.ts';
import type { Dialect } from './dialect.ts';
import { evenGrid } from './even-grid.ts';
import type { EvenGrid } from './even-grid.ts';
import { finding } from './findings.ts';
import type { Finding } from './findings.ts';
import { judgeExtent, judgeMotion, judgeSpeed } from './judge-motion.ts';
import { cleanFault, cleanLoss, isAlive } from './clean-channels.ts';
import { dropMarkedPositions } from './drop-marked-positions.ts';
import { judgeDead, judgeDropouts, judgeLoss, judgeSaturation } from './judge-signal.ts';
import { judgeSlip } from './judge-slip.ts';
import { judgeRows } from './judge-rows.ts';
import { scanClock } from './photos/scan-clock.ts';
import type { ScanClock } from './photos/scan-clock.ts';
import type { LossReading } from './loss-percent.ts';
import { maskEmpty, maskFrozenTogether } from './mask-samples.ts';
import { orderSamples } from './order-samples.ts';
import { integrateSpeed, positionUnit, speedFactor, timeFactor, toMetres } from './positions.ts';
import type { PositionUnit } from './positions.ts';
import type { RowsRead, Slot } from './read-rows.ts';
import type { Recognition } from './recognise-columns.ts';
import type { Run, RunRequest, RunResult } from './run.ts';
import { spreadCoarsePositions } from './spread-coarse-positions.ts';
import { speedFromTime } from './speed-from-time.ts';
import { THRESHOLDS } from './thresholds.ts';
import type { Role } from './column-words.ts';

interface Read {
  readonly request: RunRequest;
  readonly dialect: Dialect;
  readonly recognition: Recognition;
  readonly slots: readonly Slot[];
  readonly rows: RowsRead;
  readonly sha256: string;
}

/** From columns of numbers as written to a run: metres, one sample a place, percent of loss, masks, even grid, findings. */
export function cleanRun(read: Read): RunResult {
  const { request, dialect, recognition, rows } = read;
  const decisions = [...dialect.decisions];
  const columns = columnsByRole(read);
  const problem = (column: string | null, what: string, remedy: string): RunResult => ({ problems: [{ file: request.file, line: dialect.headerLine ?? dialect.firstDataLine, column, what, remedy }] });
  const unplaced = columns.position ? dropMarkedPositions(columns.position, Object.values(columns), rows.table) : 0;
  const placed = placeRows(read, columns, decisions);
  if ('what' in placed) return problem(placed.column, placed.what, placed.remedy);
  const { positions, resolution } = placed;
  const told = clockOf(read, columns.time, positions);
  const findings: Finding[] = [...judgeRows(rows, unplaced, positions), ...placed.findings];
  const sharing = spreadCoarsePositions(positions, rows.table.rows, resolution);
  const kept = (['lma', 'lf', 'speed', 'time'] as const).filter((role) => columns[role] !== undefined);
  const samples = orderSamples(positions, kept.map((role) => columns[role]!), rows.table.rows);
  const masks = kept.map((role) => maskEmpty(columns[role]!, samples.count));
  const maskOf = (role: Role) => masks[kept.indexOf(role as never)];
  const whole = [positions[0], positions[samples.count - 1]] as const;
  if (sharing !== null) findings.push(finding('coarse-positions', 'info', ...whole, `Positions are written every ${(resolution * 1000).toFixed(1)} mm, about ${sharing.toFixed(1)} samples to one; these are spread evenly over it. Export positions with more decimals.`));

  const loss = columns.lma ? cleanLoss(positions, columns.lma, maskOf('lma'), samples.count, guessOf(recognition, 'lma'), request) : null;
  if (loss === 'no area') return problem(guessOf(recognition, 'lma').name, 'LMA is in mm2, and the metallic area of the rope is not known', 'add rope.metallic_area_mm2, or rope.construction and rope.diameter_mm, to the record');
  if (columns.lf) cleanFault(positions, columns.lf, maskOf('lf'), samples.count);
  if (columns.lma && columns.lf) {
    maskFrozenTogether(columns.lma, maskOf('lma'), maskOf('lf'), samples.count);
    maskFrozenTogether(columns.lf, maskOf('lf'), maskOf('lma'), samples.count);
  }
  if (columns.speed) scale(columns.speed, samples.count, speedFactor(guessOf(recognition, 'speed').unit).factor);
  const grid = evenGrid({ count: samples.count, positions, typicalStep: samples.typicalStep, resolution, channels: kept.map((role, n) => ({ values: columns[role]!, valid: masks[n] })) });
  if (grid === null) return problem(columns.position ? guessOf(recognition, 'position').name : null, 'the positions make no scan: they hardly move, or span far more than their steps add up to', 'check the position column and its unit');

  const channelOf = (role: Role): Channel | null => grid.channels[kept.indexOf(role as never)] ?? null;
  const lossAlive = isAlive(channelOf('lma'));
  const faultAlive = isAlive(channelOf('lf'));
  if (loss) decisions.push(...loss.reading.decisions);
  if (loss && lossAlive) findings.push(...loss.findings);
  decisions.push(grid.interpolated ? `positions are uneven: values interpolated to a grid of ${(grid.step * 1000).toFixed(3)} mm` : `positions already stand every ${(grid.step * 1000).toFixed(3)} mm: values taken over as they are`);
  const clock = timeFactor(guessOf(recognition, 'time')?.unit ?? '').factor;
  const trace: Trace<'measured'> = {
    start: measuredPosition(grid.start), step: grid.step, length: grid.length, loss: lossAlive ? channelOf('lma') : null, fault: faultAlive ? channelOf('lf') : null,
    faultUnit: request.columns?.lf?.unit ?? (recognition.columnOf.lf === undefined ? '' : guessOf(recognition, 'lf').unit),
    speed: channelOf('speed') ?? speedFromTime(channelOf('time'), grid.step, clock), averagingLength: THRESHOLDS.averagingLength.value,
  };
  findings.push(...judgeMotion(samples, grid), ...judgeExtent(grid, request.ropeLength, trace.fault !== null, request.loop === true), ...judgeSpeed(grid, trace.speed), ...(columns.position ? judgeSlip(grid, samples, channelOf('speed'), channelOf('time'), clock) : []));
  findings.push(...judgeDead(grid, channelOf('lma'), trace.loss, 'LMA', trace.fault ? 'LF' : null), ...judgeDead(grid, channelOf('lf'), trace.fault, 'LF', trace.loss ? 'LMA' : null));
  if (trace.loss) findings.push(...judgeDropouts(grid, trace.loss, 'LMA'), ...judgeLoss(grid, trace.loss), ...judgeSaturation(grid, trace.loss, 'LMA'));
  if (trace.fault) findings.push(...judgeDropouts(grid, trace.fault, 'LF'), ...judgeSaturation(grid, trace.fault, 'LF'));
  const covered = coveredBy(trace);
  const reasons = belowFloor(grid, covered, samples.passedAgain / Math.max(1, rows.table.rows));
  findings.push(...reasons);
  const run: Run = {
    file: request.file, sha256: read.sha256, rows: rows.table.rows, rowsRejected: rows.rejected + unplaced,
    understanding: understandingOf(read, decisions, placed, loss?.reading ?? null),
    trace, positionsFell: samples.fell, statedDirection: request.direction ?? null, covered, quality: findings, rejected: reasons.length > 0, ...(loss && lossAlive ? { lossSign: loss.reading.sign } : {}), ...(told ? { clock: told } : {}),
  };
  return { run };
}

function understandingOf({ dialect, recognition }: Read, decisions: readonly string[], placed: { unit: string; certainty: number }, reading: LossReading | null): Run['understanding'] {
  return {
    encoding: dialect.encoding.encoding, delimiter: dialect.delimiter, decimalMark: dialect.decimal, headerLine: dialect.headerLine,
    preambleLines: dialect.preamble.length, decisions,
    columns: recognition.guesses.map((guess) => (guess.role === 'lma' && reading ? { ...guess, unit: reading.unit, certainty: Math.min(guess.certainty, reading.certainty), reason: `${guess.reason}; ${reading.decisions.at(-1) ?? ''}` }
      : guess.role === 'position' ? { ...guess, unit: placed.unit, certainty: Math.min(guess.certainty, placed.certainty) } : guess)),
  };
}

function guessOf(recognition: Recognition, role: Role) {
  return recognition.guesses[recognition.columnOf[role]!];
}

function columnsByRole({ recognition, slots, rows }: Read): Partial<Record<Role, Float64Array>> {
  const columns: Partial<Record<Role, Float64Array>> = {};
  for (const [role, index] of Object.entries(recognition.columnOf) as [Role, number][]) {
    const slot = slots.findIndex((each) => each.index === index);
    if (slot >= 0) columns[role] = rows.table.columns[slot];
  }
  return columns;
}

type Placed = { positions: Float64Array; resolution: number; unit: string; certainty: number; findings: Finding[] } | { what: string; column: string | null; remedy: string };

/** Position of each row in metres: as written, or from time and speed. */
function placeRows({ request, dialect, recognition, rows }: Read, columns: Partial<Record<Role, Float64Array>>, decisions: string[]): Placed {
  const count = rows.table.rows;
  if (columns.position) {
    const guess = guessOf(recognition, 'position');
    const unit = positionUnit(columns.position, count, { guess, stated: request.columns, ropeLength: request.ropeLength, preamble: dialect.preamble });
    if (unit === null) return { what: 'positions are counts of pulses, and the pulses of a metre are not known', column: guess.name, remedy: 'state columns.position.pulses_per_metre of this run' };
    decisions.push(`position: ${unit.reason}`);
    toMetres(columns.position, count, unit.metres);
    return { positions: columns.position, resolution: writtenResolution(dialect, guess.index) * unit.metres, unit: unit.unit, certainty: unit.certainty, findings: unitFindings(unit, columns.position, count) };
  }
  const time = columns.time!;
  const speed = columns.speed!;
  const clock = timeFactor(guessOf(recognition, 'time').unit);
  const pace = speedFactor(guessOf(recognition, 'speed').unit);
  scale(time, count, clock.factor);
  const { position, unknownSteps } = integrateSpeed(time, speed.map((value) => value * pace.factor), count);
  decisions.push(`position: worked out from time${clock.known ? '' : ' (taken as seconds)'} and speed${pace.known ? '' : ' (taken as m/s)'}; its scale is only as good as the speed`);
  const found = [finding('position-from-speed', 'warning', position[0], Math.max(position[count - 1], position[0] + 0.001), `The file has no position; it is worked out from time and speed${unknownSteps > 0 ? `, and ${unknownSteps} steps lack one of them and count as standing` : ''}. Tie it to marks on the rope.`)];
  scale(time, count, 1 / clock.factor);
  return { positions: position, resolution: 0, unit: 'm', certainty: 0.6, findings: found };
}

/** When the head stood where, before rows are put in order of position; null where it is not asked for or not told. */
function clockOf({ request, dialect, recognition, slots, rows }: Read, times: Float64Array | undefined, positions: Float64Array): ScanClock | null {
  if (request.clockOn === undefined || times === undefined) return null;
  const written = slots.find((each) => each.index === recognition.columnOf.time)?.clock === true;
  return scanClock(times, positions, rows.table.rows, { factor: written ? 1 : timeFactor(guessOf(recognition, 'time').unit).factor, date: request.clockOn, preamble: dialect.preamble, written });
}

/** A unit that only a guess gives is told, the louder the less speaks for it. */
function unitFindings(unit: PositionUnit, positions: Float64Array, count: number): Finding[] {
  if (unit.certainty > 0.6) return [];
  const ends = [positions[0], positions[count - 1]];
  return [finding('unit-assumed', unit.certainty < 0.5 ? 'warning' : 'info', Math.min(...ends), Math.max(...ends), `Positions are taken as ${unit.unit}: ${unit.reason}. State columns.position.unit of this run.`)];
}

/** Smallest step that the written positions can show: the most decimals used in the first rows. */
function writtenResolution(dialect: Dialect, index: number): number {
  let decimals = 0;
  for (const row of dialect.sample) {
    const cell = (row[index] ?? '').trim();
    if (/e/i.test(cell)) return 0;
    const mark = cell.lastIndexOf(dialect.decimal);
    if (mark >= 0) decimals = Math.max(decimals, cell.length - mark - 1);
  }
  return 10 ** -decimals;
}

function scale(values: Float64Array, count: number, factor: number): void {
  if (factor !== 1) for (let i = 0; i < count; i += 1) values[i] *= factor;
}

/** Lengths with valid LMA, or valid LF where the file has no LMA; holes too short to be a gap are bridged. */
function coveredBy(trace: Trace<'measured'>): Interval<'measured'>[] {
  const channel = trace.loss ?? trace.fault;
  if (!channel) return [];
  const joined: { from: Interval<'measured'>['from']; to: Interval<'measured'>['to'] }[] = [];
  for (const each of validIntervals(trace, channel.valid)) {
    const last = joined.at(-1);
    if (last && each.from - last.to <= THRESHOLDS.gapLength.value) last.to = each.to;
    else joined.push({ from: each.from, to: each.to });
  }
  return joined;
}

/** Reasons why a run is too poor to be used for a judgement. */
function belowFloor(grid: EvenGrid, covered: readonly Interval<'measured'>[], passedAgain: number): Finding[] {
  const end = grid.start + (grid.length - 1) * grid.step;
  const share = covered.reduce((sum, each) => sum + each.to - each.from, 0) / (grid.length * grid.step);
  const found: Finding[] = [];
  if (share < THRESHOLDS.validShare.value) found.push(finding('below-floor', 'reject', grid.start, end, `Only ${(100 * share).toFixed(0)} % of the run shows a live signal (floor ${100 * THRESHOLDS.validShare.value} %): the run is not used. Repeat it.`));
  if (passedAgain > THRESHOLDS.backwardShare.value) found.push(finding('below-floor', 'reject', grid.start, end, `${(100 * passedAgain).toFixed(0)} % of the samples lie behind the one before: the positions cannot be trusted and the run is not used. Check the encoder and repeat.`));
  return found;
}
