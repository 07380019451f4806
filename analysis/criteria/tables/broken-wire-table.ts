/**
 * Visible broken outer wires that mean discard (count reached or exceeded), by the number n of load-bearing wires in the outer strands.
 * Single-layer and parallel-closed ropes: read in two public reprints of the crane standard's table; the first four columns are
 * 4, 8, 2 and 4 % of the upper n of the row, rounded half up. Rotation-resistant ropes: from memory, not found in print.
 * Check against a bought copy of ISO 4309 before relying on any cell.
 */
export interface BrokenWireRow {
  readonly rcn: string;
  readonly from: number;
  readonly to: number;
  readonly ordinary: readonly [number, number];
  readonly lang: readonly [number, number];
  readonly multiLayer: readonly [number, number];
  /** The two reprints differ in the multi-layer cells. */
  readonly disputed: boolean;
  /** Multi-layer cells of the second reprint where it differs. */
  readonly secondReprint: readonly [number, number] | null;
}

type Pair = readonly [number, number];
const row = (rcn: string, from: number, to: number, ordinary: Pair, lang: Pair, multiLayer: Pair, secondReprint: Pair | null = null): BrokenWireRow =>
  ({ rcn, from, to, ordinary, lang, multiLayer, disputed: secondReprint !== null, secondReprint });

/** Limits over 6d and 30d. */
export const SINGLE_LAYER_ROPES: readonly BrokenWireRow[] = [
  row('01', 0, 50, [2, 4], [1, 2], [4, 8]),
  row('02', 51, 75, [3, 6], [2, 3], [6, 12]),
  row('03', 76, 100, [4, 8], [2, 4], [8, 16]),
  row('04', 101, 120, [5, 10], [2, 5], [10, 20], [10, 19]),
  row('05', 121, 140, [6, 11], [3, 6], [12, 22], [11, 22]),
  row('06', 141, 160, [6, 13], [3, 6], [12, 26], [13, 26]),
  row('07', 161, 180, [7, 14], [4, 7], [14, 28], [14, 29]),
  row('08', 181, 200, [8, 16], [4, 8], [16, 32]),
  row('09', 201, 220, [9, 18], [4, 9], [18, 36]),
  row('10', 221, 240, [10, 19], [5, 10], [20, 38]),
  row('11', 241, 260, [10, 21], [5, 10], [20, 42]),
  row('12', 261, 280, [11, 22], [6, 11], [22, 44]),
  row('13', 281, 300, [12, 24], [6, 12], [24, 48]),
];

export interface RotationResistantRow {
  readonly rcn: string;
  /** Outer strands from..to and wires n from..to. */
  readonly outerStrands: Pair;
  readonly from: number;
  readonly to: number;
  readonly singleLayer: Pair;
  readonly multiLayer: Pair;
}

const resistant = (rcn: string, outerStrands: Pair, from: number, to: number, singleLayer: Pair, multiLayer: Pair): RotationResistantRow =>
  ({ rcn, outerStrands, from, to, singleLayer, multiLayer });
const MANY: Pair = [11, Infinity];

export const ROTATION_RESISTANT_ROPES: readonly RotationResistantRow[] = [
  resistant('21', [4, 4], 0, 100, [2, 4], [2, 4]),
  resistant('22', [3, 4], 101, Infinity, [2, 4], [4, 8]),
  resistant('23-1', MANY, 71, 100, [2, 4], [4, 8]),
  resistant('23-2', MANY, 101, 120, [3, 5], [5, 10]),
  resistant('23-3', MANY, 121, 140, [3, 5], [6, 11]),
  resistant('24', MANY, 141, 160, [3, 6], [6, 13]),
  resistant('25', MANY, 161, 180, [4, 7], [7, 14]),
  resistant('26', MANY, 181, 200, [4, 8], [8, 16]),
  resistant('27', MANY, 201, 220, [4, 9], [9, 18]),
  resistant('28', MANY, 221, 240, [5, 10], [10, 19]),
  resistant('29', MANY, 241, 260, [5, 10], [10, 21]),
  resistant('30', MANY, 261, 280, [6, 11], [11, 22]),
  resistant('31', MANY, 281, 300, [6, 12], [12, 24]),
];

/** Beyond the last row the limits go on as shares of n, in percent [from memory]. */
export const BEYOND_LAST_ROW = {
  ordinary: [4, 8] as Pair, lang: [2, 4] as Pair, multiLayer: [8, 16] as Pair,
  resistantSingleLayer: [2, 4] as Pair, resistantMultiLayer: [4, 8] as Pair,
};
