import type { Lab } from '../colour/lab.ts';
import type { RecipeSource } from './whole-parts.ts';

/** The best mixture of a set of pigments, with its colour. */
export interface ScoredSet extends RecipeSource {
  readonly lab: Lab;
}

/** Maximum score of an alternative above the best (CIEDE2000). */
const WORTH = 2;
/** Gain in score that an additional pigment must bring. */
const PER_PIGMENT = 0.2;

/**
 * Selects sets that differ from the best and from each other: of any two sets, each has an
 * essential pigment that the other lacks. Other ratios of the same pigments do not count.
 * @param sources    sorted by score, ascending
 * @param matters    essential members of a set: without one its colour would plainly differ
 * @param measurable whether whole parts of a set come near its colour too
 */
export function distinctAlternatives(
  best: ScoredSet,
  sources: readonly ScoredSet[],
  count: number,
  matters: (one: ScoredSet) => readonly number[],
  measurable: (one: ScoredSet) => boolean,
): ScoredSet[] {
  const limit = best.score + WORTH;
  const rank = (s: ScoredSet) => Math.max(s.score, 0.5) + PER_PIGMENT * s.members.length;
  const ranked = sources.filter((s) => s.score <= limit).sort((a, b) => rank(a) - rank(b));
  const chosen: { full: ScoredSet; matter: readonly number[] }[] = [];
  const known = [{ full: best, matter: matters(best) }];
  for (const full of ranked) {
    if (chosen.length >= count) break;
    const one = { full, matter: matters(full) };
    const lacks = (a: typeof one, b: typeof one) =>
      a.matter.some((m) => !b.full.members.includes(m));
    if (!known.every((other) => lacks(one, other) && lacks(other, one))) continue;
    if (!measurable(full)) continue;
    chosen.push(one);
    known.push(one);
  }
  return chosen.map((one) => one.full);
}
