/** One visual observation at a place on the rope, from the notes file or entered in the app. */
export interface VisualNote {
  readonly id: string;
  readonly inspection: string;
  readonly from: number; // rope position, m
  readonly to: number; // equal to `from` for a point
  readonly kind: VisualKind;
  /** The kind as written, for kinds that the program does not know. */
  readonly kindAsWritten: string;
  readonly value: number | null;
  readonly unit: string;
  readonly severity: string;
  readonly photo: string | null;
  readonly remark: string;
}

/** What can be seen or measured by hand; each is counted or judged by some criterion, or is evidence only. */
export type VisualKind =
  | 'broken-wires' | 'broken-wires-valley' | 'broken-wires-termination' | 'broken-wires-strand' | 'broken-wires-adjacent'
  | 'diameter' | 'lay-length' | 'corrosion-external' | 'corrosion-internal' | 'outer-wire-wear'
  | 'waviness' | 'distortion' | 'lubrication' | 'heat' | 'end-attachment' | 'opened' | 'loose-wire' | 'photo' | 'other';
