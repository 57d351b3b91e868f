/** Seeded noise for our own drawings: the same seed draws the same picture on every machine. */

/** A whole-number hash of a lattice point as 0…1. */
export function hash(x: number, y: number, seed: number): number {
  let h = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(seed + 1, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

/** Smooth noise of wavelength 1, −1…1. */
export function smooth(x: number, y: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const fx = x - ix;
  const fy = y - iy;
  const u = fx * fx * (3 - 2 * fx);
  const v = fy * fy * (3 - 2 * fy);
  const top = hash(ix, iy, seed) * (1 - u) + hash(ix + 1, iy, seed) * u;
  const low = hash(ix, iy + 1, seed) * (1 - u) + hash(ix + 1, iy + 1, seed) * u;
  return 2 * (top * (1 - v) + low * v) - 1;
}

/** Octaves of smooth noise, about −1…1. */
export function clouds(x: number, y: number, seed: number, octaves = 4): number {
  let sum = 0;
  let size = 0.5;
  let scale = 1;
  for (let i = 0; i < octaves; i++) {
    sum += size * smooth(x * scale, y * scale, seed + i * 17);
    size /= 2;
    scale *= 2.03;
  }
  return sum * 1.3;
}

/** A stream of seeded numbers 0…1. */
export function stream(seed: number): () => number {
  let n = 0;
  return () => hash(n++, 7919, seed);
}

/** A stream of seeded normal deviates. */
export function normal(seed: number): () => number {
  const next = stream(seed);
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    const r = Math.sqrt(-2 * Math.log(1 - next()));
    const t = 2 * Math.PI * next();
    spare = r * Math.sin(t);
    return r * Math.cos(t);
  };
}
