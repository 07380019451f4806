/** One measured place: what was read, and when. `t` in any unit that is the same for all places of a rope. */
export interface SeriesLike {
  readonly points: readonly SeriesReading[];
  /** Readings are whole counts that only chance separates from their mean (broken wires). */
  readonly counts?: boolean;
}

export interface SeriesReading {
  readonly t: number;
  readonly value: number;
  /** One sigma; null where nothing is known of it. */
  readonly uncertainty: number | null;
}

/** A place brought to the scale of the rope: time from its last reading in spans, level in reference levels, growth upwards. */
export interface ScaledPlace {
  readonly index: number;
  readonly u: Float64Array; // last is 0
  readonly y: Float64Array;
  readonly noise: Float64Array; // one sigma
  readonly counts: boolean;
}

/** Weight of the prior that keeps two readings from choosing a shape; it fades as further readings can tell one. */
export function shapeNeutral(place: ScaledPlace): number {
  return 3 / place.u.length ** 2;
}

export interface ScaledRope {
  readonly places: readonly ScaledPlace[];
  /** +1 where the quantity grows towards the limit from below, -1 where it falls to it. */
  readonly direction: 1 | -1;
  readonly span: number; // of time
  readonly reference: number; // level
  readonly limit: number; // scaled
  /** Uncertainty was stated for every reading. */
  readonly noiseStated: boolean;
  /** The zero of the quantity has no meaning: growth counts from an unknown level. */
  readonly zeroUnknown: boolean;
}

/**
 * Common scale for all places of a rope. A place with one reading takes no part. Null where fewer than two readings of any
 * place are left, or no time passed between them.
 */
export function scaleRope(series: readonly SeriesLike[], limit: number): ScaledRope | null {
  const kept = series.map((each, index) => ({ index, counts: each.counts === true, points: cleanPoints(each.points) })).filter((each) => each.points.length >= 2);
  if (kept.length === 0) return null;
  const span = Math.max(...kept.map((each) => each.points[each.points.length - 1].t - each.points[0].t));
  if (!(span > 0)) return null;
  const all = kept.flatMap((each) => each.points.map((point) => point.value));
  const direction = directionOf(kept.map((each) => each.points), limit);
  const least = Math.min(...all.map((value) => value * direction));
  const zeroUnknown = limit * direction <= 0 || (least < 0 && direction < 0);
  // Without a natural zero the level counts from just below the lowest reading.
  const shift = zeroUnknown ? least : 0;
  const lasts = kept.map((each) => each.points[each.points.length - 1].value * direction - shift).sort((a, b) => a - b);
  const scaledLimit = limit * direction - shift;
  const reference = Math.max(lasts[lasts.length >> 1], scaledLimit / 20, 1e-12 * Math.abs(scaledLimit));
  const rough = kept.every((each) => each.points.every((point) => point.uncertainty !== null && point.uncertainty > 0)) ? null : roughNoise(kept.map((each) => each.points));
  const places = kept.map((each) => scalePlace(each, { direction, shift, reference, span, rough }));
  return { places, direction, span, reference, limit: scaledLimit / reference, noiseStated: rough === null, zeroUnknown };
}

function cleanPoints(points: readonly SeriesReading[]): SeriesReading[] {
  return points.filter((point) => Number.isFinite(point.t) && Number.isFinite(point.value)).sort((a, b) => a.t - b.t);
}

/** The side from which the limit is approached: where most readings stand. */
function directionOf(places: readonly (readonly SeriesReading[])[], limit: number): 1 | -1 {
  let below = 0;
  for (const points of places) below += points[0].value <= limit ? 1 : -1;
  return below >= 0 ? 1 : -1;
}

interface Scale {
  readonly direction: number;
  readonly shift: number;
  readonly reference: number;
  readonly span: number;
  readonly rough: number | null;
}

function scalePlace(place: { index: number; counts: boolean; points: readonly SeriesReading[] }, scale: Scale): ScaledPlace {
  const { points } = place;
  const last = points[points.length - 1].t;
  return {
    index: place.index, counts: place.counts,
    u: Float64Array.from(points, (point) => (point.t - last) / scale.span),
    y: Float64Array.from(points, (point) => (point.value * scale.direction - scale.shift) / scale.reference),
    noise: Float64Array.from(points, (point) => (scale.rough ?? Math.max(point.uncertainty ?? 0, 1e-9 * scale.reference)) / scale.reference),
  };
}

/**
 * Noise of readings without a stated uncertainty: what a reading departs from the line through its two neighbours,
 * middle of all places. An upper bound where growth is curved; the grid of noise scales reaches well below it.
 */
function roughNoise(places: readonly (readonly SeriesReading[])[]): number {
  const departures: number[] = [];
  let range = 0;
  for (const points of places) {
    range = Math.max(range, Math.abs(points[points.length - 1].value - points[0].value));
    for (let i = 1; i + 1 < points.length; i += 1) {
      const [before, here, after] = [points[i - 1], points[i], points[i + 1]];
      const share = after.t > before.t ? (here.t - before.t) / (after.t - before.t) : 0.5;
      const line = before.value + share * (after.value - before.value);
      departures.push(Math.abs(here.value - line) / Math.sqrt(1 + share * share + (1 - share) * (1 - share)));
    }
  }
  const floor = Math.max(1e-3 * range, 1e-12);
  if (departures.length === 0) return Math.max(0.1 * range, floor);
  departures.sort((a, b) => a - b);
  return Math.max(1.4826 * departures[departures.length >> 1], floor);
}
