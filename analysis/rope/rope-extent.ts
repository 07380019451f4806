import type { RopeRecord } from './record.ts';

/** How far the rope reaches, as far as the record says. Metres. */
export interface RopeExtent {
  readonly ropeLength: number | null;
  /** Set on an endless rope, where positions wrap. */
  readonly loopLength: number | null;
}

export function ropeExtent(record: RopeRecord): RopeExtent {
  const ropeLength = record.rope.length_m ?? null;
  return { ropeLength, loopLength: record.rope.loop === true ? ropeLength : null };
}
