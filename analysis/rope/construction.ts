/** What a construction designation (EN 12385-2 style, such as `6x36WS-IWRC`) says about the make of a rope. */
export interface Construction {
  readonly family: 'stranded' | 'rotation-resistant' | 'spiral' | 'locked-coil';
  /** Name of the row of handbook factors, or null where no row fits. */
  readonly factorClass: string | null;
  readonly strands: number | null;
  readonly outerStrands: number | null;
  /** Load-bearing wires of one strand; filler wires are not counted. */
  readonly wiresPerStrand: number | null;
  readonly outerWiresPerStrand: number | null;
  readonly fillerWiresPerStrand: number;
  readonly seale: boolean;
  readonly core: 'fibre' | 'steel' | 'locked-coil' | null;
  readonly strandCore: boolean;
}

interface StrandMake {
  readonly load: number;
  readonly outer: number;
  readonly filler: number;
}

/** Strand makes by printed wire count and kind: load-bearing wires, outer wires, fillers. */
const STRANDS: Readonly<Record<string, StrandMake>> = {
  '7': { load: 7, outer: 6, filler: 0 },
  '17S': { load: 17, outer: 8, filler: 0 },
  '19': { load: 19, outer: 12, filler: 0 },
  '19S': { load: 19, outer: 9, filler: 0 },
  '19W': { load: 19, outer: 12, filler: 0 },
  '19F': { load: 19, outer: 12, filler: 6 },
  '19M': { load: 19, outer: 12, filler: 0 },
  '21F': { load: 16, outer: 10, filler: 5 },
  '25F': { load: 19, outer: 12, filler: 6 },
  '25': { load: 19, outer: 12, filler: 6 },
  '26WS': { load: 26, outer: 10, filler: 0 },
  '31WS': { load: 31, outer: 12, filler: 0 },
  '35N': { load: 35, outer: 14, filler: 0 },
  '36WS': { load: 36, outer: 14, filler: 0 },
  '37M': { load: 37, outer: 18, filler: 0 },
  '41WS': { load: 41, outer: 16, filler: 0 },
};

const KINDS: readonly (readonly [RegExp, string])[] = [
  [/^(WS|SW|WARRINGTON.?SEALE)/, 'WS'], [/^(S|SEALE)(?![A-Z])/, 'S'], [/^SEALE/, 'S'], [/^(W|WARRINGTON)(?![A-Z])/, 'W'], [/^WARRINGTON/, 'W'],
  [/^(FILLER|FI|F)(?!C)(?![A-Z])/, 'F'], [/^FILLER/, 'F'], [/^N(?![A-Z])/, 'N'], [/^M(?![A-Z])/, 'M'],
];

/** Reads a designation; null where it cannot be understood. `×`, `*`, blanks and brackets are accepted. */
export function readConstruction(text: string): Construction | null {
  const clean = text.trim().toUpperCase();
  if (/LOCKED|\bFLC\b|\bVVS\b|\bHLC\b/.test(clean)) {
    return { family: 'locked-coil', factorClass: 'full-locked coil', strands: null, outerStrands: null, wiresPerStrand: null, outerWiresPerStrand: null, fillerWiresPerStrand: 0, seale: false, core: 'locked-coil', strandCore: false };
  }
  const parts = /(\d+)\s*[X×*]\s*(K?)\s*(\d+)\s*[-( ]*([A-Z-]*)/.exec(clean);
  if (!parts) return null;
  const strands = Number(parts[1]);
  const compacted = parts[2] === 'K';
  const printed = Number(parts[3]);
  // No rope is laid of no strands, or of strands of fewer than three wires.
  if (strands < 1 || strands > 60 || printed < 3 || printed > 130) return null;
  const kind = KINDS.find(([pattern]) => pattern.test(parts[4]))?.[1] ?? '';
  const { core, strandCore } = readCore(clean);
  if (strands === 1) return spiral(printed);
  if (strands >= 11) return rotationResistant(strands, printed, compacted, core, strandCore);
  return stranded(strands, printed, kind, compacted, core, strandCore);
}

function readCore(clean: string): { core: 'fibre' | 'steel' | null; strandCore: boolean } {
  const strandCore = /WSC/.test(clean);
  if (strandCore || /IWR|PWRC|ESWRC|EFWRC|\bSTEEL\b|WRC/.test(clean)) return { core: 'steel', strandCore };
  if (/[NSP]?FC\b|FIBRE|FIBER|\bFE\b/.test(clean)) return { core: 'fibre', strandCore };
  return { core: null, strandCore };
}

function spiral(printed: number): Construction {
  const layers = [1, 7, 19, 37, 61, 91];
  const layer = layers.indexOf(printed);
  return { family: 'spiral', factorClass: 'spiral strand', strands: 1, outerStrands: 1, wiresPerStrand: printed, outerWiresPerStrand: layer > 0 ? 6 * layer : null, fillerWiresPerStrand: 0, seale: false, core: 'steel', strandCore: false };
}

function rotationResistant(strands: number, printed: number, compacted: boolean, core: Construction['core'], strandCore: boolean): Construction {
  // 17 and 18 strands lie 11 or 12 outside; 34 and 35 lie 17 and 16 outside (the 35th is the centre strand).
  const outer: Readonly<Record<number, number>> = { 17: 11, 18: 12, 19: 12, 34: 17, 35: 16 };
  const make = STRANDS[String(printed)];
  const many = strands >= 27;
  const factorClass = printed !== 7 ? null : compacted ? '35xK7' : many ? '34x7' : '18x7';
  return {
    family: 'rotation-resistant', factorClass, strands, outerStrands: outer[strands] ?? null, wiresPerStrand: make?.load ?? printed,
    outerWiresPerStrand: make?.outer ?? null, fillerWiresPerStrand: 0, seale: false, core, strandCore,
  };
}

function stranded(strands: number, printed: number, kind: string, compacted: boolean, core: Construction['core'], strandCore: boolean): Construction {
  const make = STRANDS[`${printed}${kind}`] ?? Object.entries(STRANDS).find(([key]) => key.replace(/\D+$/, '') === String(printed))?.[1];
  const wires = make?.load ?? printed;
  const few = strands <= 4;
  return {
    family: few ? 'rotation-resistant' : 'stranded', factorClass: compacted || few ? null : factorClassOf(strands, printed, kind), strands, outerStrands: strands,
    wiresPerStrand: wires, outerWiresPerStrand: make?.outer ?? null, fillerWiresPerStrand: make?.filler ?? 0,
    seale: kind === 'S', core, strandCore,
  };
}

/** EN 12385 groups parallel-lay strands of 15 to 26 wires as the 19 class and of 27 to 49 as the 36 class. */
function factorClassOf(strands: number, printed: number, kind: string): string | null {
  if (strands !== 6 && strands !== 8) return null;
  if (printed === 7) return `${strands}x7`;
  if (kind === 'M') return strands === 6 && (printed === 19 || printed === 37) ? `6x${printed}M` : null;
  if (kind === 'N') return strands === 6 && printed === 35 ? '6x35N' : null;
  if (printed >= 15 && printed <= 26) return `${strands}x19`;
  if (printed >= 27 && printed <= 49) return `${strands}x36`;
  return null;
}
