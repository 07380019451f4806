/** One visual observation for a notes file; what is not known stays empty. */
export interface Observation {
  readonly at: number;
  readonly to?: number;
  readonly kind: string;
  readonly value?: number;
  readonly unit?: string;
  readonly severity?: string;
  readonly photo?: string;
  readonly remark: string;
}

/** Bytes of a visual-notes CSV. Every remark stands in quotes; the first line says SYNTHETIC. */
export function writeNotes(observations: readonly Observation[]): Uint8Array {
  const header = 'from_m,to_m,kind,value,unit,severity,photo,remark';
  const rows = observations.map((each) =>
    [each.at.toFixed(2), (each.to ?? each.at).toFixed(2), each.kind, each.value ?? '', each.unit ?? '', each.severity ?? '', each.photo ?? '', `"${each.remark.replaceAll('"', '""')}"`].join(','));
  return new TextEncoder().encode(['# SYNTHETIC visual notes', header, ...rows].join('\n') + '\n');
}
