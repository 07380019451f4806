/** Chance for laboratory traces: a small fast counter generator and normal draws by the polar method, unlike the product's own. */
export interface LabRandom {
  uniform(): number;
  between(low: number, high: number): number;
  normal(): number;
  pick<T>(from: readonly T[]): T;
}

export function labRandom(seed: number): LabRandom {
  let a = 0x9e3779b9 ^ seed, b = 0x243f6a88, c = 0xb7e15162, counter = 1;
  const uniform = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < 15; i += 1) uniform();
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s >= 1 || s === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(s)) / s);
      spare = v * factor;
      return u * factor;
    }
  };
  return { uniform, normal, between: (low, high) => low + (high - low) * uniform(), pick: (from) => from[Math.floor(uniform() * from.length)] };
}

/**
 * Noise whose power falls as one over frequency: relaxation processes an octave apart, each of equal variance.
 * Root mean square 1 over lengths long against `slowest` samples.
 */
export function flickerNoise(random: LabRandom, count: number, slowest: number): Float64Array {
  const out = new Float64Array(count);
  const octaves = Math.max(1, Math.round(Math.log2(slowest)));
  for (let octave = 0; octave < octaves; octave += 1) {
    const keep = Math.exp(-1 / 2 ** (octave + 1));
    const kick = Math.sqrt(1 - keep * keep);
    let state = random.normal();
    for (let i = 0; i < count; i += 1) {
      state = keep * state + kick * random.normal();
      out[i] += state / Math.sqrt(octaves);
    }
  }
  return out;
}
