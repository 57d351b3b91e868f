/** A stream of numbers in 0…1 that is the same for the same seed, on every machine. */
export type Chance = () => number;

/** Mulberry32: small, fast and even enough for folds; not for anything secret. */
export function chance(seed: number): Chance {
  let state = Math.imul(Math.trunc(seed) ^ 0x9e3779b9, 0x85ebca6b) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A number between low and high. */
export const between = (next: Chance, low: number, high: number) => low + (high - low) * next();

/** A seed out of words (FNV-1a), so that one name always falls in the same folds. */
export function seedOf(words: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < words.length; i++) {
    hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193);
  }
  return hash >>> 0;
}
