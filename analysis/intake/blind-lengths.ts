import type { Interval } from '../rope/interval.ts';
import { unionOf } from '../rope/interval.ts';
import type { Landmark } from '../rope/record.ts';
import { ropePosition } from '../rope/units.ts';

/** A length that the head cannot judge, with the landmark that makes it so and why. */
export interface BlindLength {
  readonly where: Interval<'rope'>;
  readonly landmark: string;
  readonly reason: string;
}

type LandmarkClass = 'socket' | 'clamp' | 'saddle' | 'splice' | 'feature';

/** Words of the trade in a landmark's kind or name, in the order in which they are tried: a `splice clamp` is a clamp. */
const CLASSES: readonly (readonly [LandmarkClass, RegExp])[] = [
  ['socket', /socket|terminat|end[ -]*(fixing|attachment|fitting|connection)|thimble|ferrule|verguss|seilkopf|endbefestigung|culot|attache|attacco|testa[ _]fusa|terminal|ko[nń]c[oó]wk|муфт|заделк|коуш|索节|锥套/i],
  ['clamp', /clamp|grip|clip|klemme|pince|morsett|morsa|grapa|zacisk|зажим|夹/i],
  ['saddle', /saddle|shoe|\bschuh|sattel|sabot|scarpa|zapata|siod[lł]o|башмак|鞍/i],
  ['splice', /splice|tuck|splei[sß]|[eé]pissure|impalmatur|giunzione|empalme|splot|сплес|счал|编接/i],
];

/**
 * Blind length to either side of a landmark without its own `blind_m`, metres. The low end of common practice (0.5-2 m: half
 * a head and the fringe field of the fitting) [C]: more would take away signal that is valid, and a record can say more.
 */
export const DEFAULT_BLIND: Readonly<Record<LandmarkClass, number>> = { socket: 0.5, clamp: 0.5, saddle: 0.5, splice: 0, feature: 0 };
/** Half length of a splice or feature given as one position, metres: some tucks or the width of a marker's signal [C]. */
const FEATURE_HALF_LENGTH: Readonly<Record<LandmarkClass, number>> = { socket: 0.5, clamp: 0.5, saddle: 0.5, splice: 1.5, feature: 0.05 };

export function classOf(landmark: Landmark): LandmarkClass {
  const byKind = landmark.kind === undefined ? undefined : CLASSES.find(([, words]) => words.test(landmark.kind!));
  return (byKind ?? CLASSES.find(([, words]) => words.test(landmark.name)))?.[0] ?? 'feature';
}

/**
 * Lengths of rope position that count as not inspected whatever the file holds there. The landmark's own `blind_m` wins over
 * the default of its kind; a landmark with from_m and to_m is blind between them and `blind_m` beyond. Splices, markers and
 * sheaves are known features, not blind. Cut to the rope; on an endless rope a length over the origin comes as two.
 */
export function blindLengths(landmarks: readonly Landmark[], ropeLength: number | null, loop: boolean): BlindLength[] {
  return landmarks.flatMap((landmark) => {
    const kind = classOf(landmark);
    const ranged = landmark.from_m !== undefined && landmark.to_m !== undefined;
    const blindKind = kind === 'socket' || kind === 'clamp' || kind === 'saddle';
    // A stated length is the landmark's own; without one, the default applies to a point only.
    const margin = landmark.blind_m ?? (ranged ? 0 : DEFAULT_BLIND[kind]);
    if (!blindKind && !(margin > 0)) return [];
    const from = (landmark.from_m ?? landmark.position_m!) - margin;
    const to = (landmark.to_m ?? landmark.position_m!) + margin;
    const reason = landmark.blind_m !== undefined ? `blind for ${landmark.blind_m} m to either side as stated in the record`
      : ranged ? `a ${kind} covers the rope here` : `within ${DEFAULT_BLIND[kind]} m of a ${kind} the head reads its fringe field (common practice 0.5-2 m)`;
    return cut(from, to, ropeLength, loop).map((where) => ({ where, landmark: landmark.name, reason }));
  });
}

function cut(from: number, to: number, ropeLength: number | null, loop: boolean): Interval<'rope'>[] {
  const interval = (a: number, b: number) => ({ from: ropePosition(a), to: ropePosition(b) });
  if (!(to > from)) return [];
  if (!loop || ropeLength === null) {
    const inside = interval(Math.max(0, from), ropeLength === null ? to : Math.min(to, ropeLength));
    return inside.to > inside.from ? [inside] : [];
  }
  if (to - from >= ropeLength) return [interval(0, ropeLength)];
  const start = from - Math.floor(from / ropeLength) * ropeLength;
  const end = start + (to - from);
  return end <= ropeLength ? [interval(start, end)] : unionOf([interval(start, ropeLength), interval(0, end - ropeLength)]);
}

/**
 * Lengths whose signal a landmark explains: splices with their tucks, sockets, clamps, single markers. They are not findings.
 * A length named for what runs over it, such as a sheave, explains no signal: that is where wear is looked for.
 */
export function knownFeatures(landmarks: readonly Landmark[]): Interval<'rope'>[] {
  const explaining = landmarks.filter((landmark) => classOf(landmark) !== 'feature' || landmark.from_m === undefined);
  return unionOf(explaining.map((landmark) => {
    const half = landmark.blind_m ?? FEATURE_HALF_LENGTH[classOf(landmark)];
    const ranged = landmark.from_m !== undefined && landmark.to_m !== undefined;
    const margin = ranged ? (landmark.blind_m ?? 0) : half;
    return { from: ropePosition((landmark.from_m ?? landmark.position_m!) - margin), to: ropePosition((landmark.to_m ?? landmark.position_m!) + margin) };
  }));
}
