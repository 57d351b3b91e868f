/** A stream of numbers in 0…1 that is the same for the same seed, on every machine. */
export type Chance = () => number;

/** Mulberry32 (public domain): small, fast and even enough to deal and to shake; not for anything secret. */
export function chance(seed: number): Chance {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
