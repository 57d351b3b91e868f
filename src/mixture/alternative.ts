import type { Full } from './find.ts';

/** A pigment that makes this much of a mixture's strength is one that a painter would miss. */
const MISSED = 0.05;
/** Alternatives lie at most this far beyond the best. */
const WORTH = 2;
/** An extra pigment must buy this much. */
const PER_PIGMENT = 0.2;

/**
 * Sets that a painter would call different from the best and from each other: each holds a pigment
 * that matters and that the other lacks, both ways. Other ratios of the same pigments are not.
 * @param sources rising by score
 */
export function differing(best: Full, sources: readonly Full[], count: number): Full[] {
  const chosen: Full[] = [];
  const limit = best.score + WORTH;
  const rank = (s: Full) => Math.max(s.score, 0.5) + PER_PIGMENT * s.members.length;
  const ranked = sources.filter((s) => s.score <= limit).sort((a, b) => rank(a) - rank(b));
  for (const one of ranked) {
    if (chosen.length >= count) break;
    if ([best, ...chosen].every((other) => different(one, other))) chosen.push(one);
  }
  return chosen;
}

const different = (a: Full, b: Full): boolean => lacks(a, b) && lacks(b, a);

/** Whether `a` holds a pigment that matters and `b` has none of it. */
function lacks(a: Full, b: Full): boolean {
  const total = a.strengths.reduce((sum, s) => sum + s, 0);
  return a.members.some((m, i) => a.strengths[i]! >= MISSED * total && !b.members.includes(m));
}
