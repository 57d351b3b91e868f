import { type RandomGenerator, seededRandom as stream } from '../random.ts';

export type { RandomGenerator };

/** Seeded random generator for a drawing; neighbouring seeds give unrelated drawings. */
export const drawingRandom = (seed: number): RandomGenerator =>
  stream(Math.imul(Math.trunc(seed) ^ 0x9e3779b9, 0x85ebca6b));

/** Random number from low to high. */
export const randomBetween = (next: RandomGenerator, low: number, high: number) =>
  low + (high - low) * next();

/**
 * Seed from a text (FNV-1a over UTF-16 code units), so that one name always gives the same folds.
 */
export function seedOf(words: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < words.length; i++) {
    hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193);
  }
  return hash >>> 0;
}
