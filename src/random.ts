/** A seeded generator: each call returns the next number, 0 ≤ x < 1. Identical on every machine. */
export type RandomGenerator = () => number;

/**
 * Seeded random numbers by Mulberry32 (public domain): small, fast and uniform enough to shuffle
 * and to jitter; not cryptographically secure.
 * @param seed taken as a 32-bit integer
 */
export function seededRandom(seed: number): RandomGenerator {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
