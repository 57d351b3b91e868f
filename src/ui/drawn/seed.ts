import { type Chance, chance as stream } from '../../chance.ts';

export type { Chance };

/** Chance for a drawing: seeds that lie side by side fall quite differently. */
export const chance = (seed: number): Chance =>
  stream(Math.imul(Math.trunc(seed) ^ 0x9e3779b9, 0x85ebca6b));

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
