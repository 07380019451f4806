/** Share of the time to the earliest low bound after which the next inspection is due, and the range in which a user may set it. */
export const INTERVAL_SHARE = { name: 'nextInspectionShare', value: 0.5, least: 0.1, most: 1, reason: 'common practice: inspect within half of the remaining life, as API 510 and 570 do (from memory)' } as const;

/** The share that the journal's parameters ask for, kept within its range; else the usual one. */
export function intervalShare(values: Readonly<Record<string, number>> | undefined): number {
  const asked = values?.[INTERVAL_SHARE.name];
  return asked === undefined || !Number.isFinite(asked) ? INTERVAL_SHARE.value : Math.min(INTERVAL_SHARE.most, Math.max(INTERVAL_SHARE.least, asked));
}
