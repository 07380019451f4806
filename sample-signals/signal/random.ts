/** A seeded source of chance: the same seed gives the same draws on every machine. */
export interface Random {
  /** Uniform on [0, 1). */
  uniform(): number;
  between(low: number, high: number): number;
  /** Standard normal. */
  normal(): number;
}

/** 32-bit hash of a text (FNV-1a), so that every part of a rope can have its own stream by name. */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** Small fast counter generator of 32-bit words (the sfc32 recurrence), warmed up; normal draws by Box and Muller. */
export function randomFrom(name: string): Random {
  let a = seedOf(name);
  let b = seedOf(`${name}/b`);
  let c = seedOf(`${name}/c`);
  let counter = 1;
  const uniform = (): number => {
    const word = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + word) | 0;
    return (word >>> 0) / 4294967296;
  };
  for (let i = 0; i < 16; i += 1) uniform();
  let kept: number | null = null;
  const normal = (): number => {
    if (kept !== null) {
      const value = kept;
      kept = null;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    kept = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { uniform, normal, between: (low, high) => low + (high - low) * uniform() };
}
