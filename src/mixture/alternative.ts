import type { Lab } from '../colour/lab.ts';
import type { Source } from './parts.ts';

/** A set with everything that a choice among sets asks for. */
export interface Full extends Source {
  readonly lab: Lab;
}

/** Alternatives lie at most this far beyond the best. */
const WORTH = 2;
/** An extra pigment must buy this much. */
const PER_PIGMENT = 0.2;

/**
 * Sets that a painter would call different from the best and from each other: each holds a pigment
 * that matters and that the other lacks, both ways. Other ratios of the same pigments are not.
 * @param sources rising by score
 * @param matters members of a set without which its colour would plainly be another
 * @param measurable whether whole parts of a set come near too: others are no use on the bench
 */
export function differing(
  best: Full,
  sources: readonly Full[],
  count: number,
  matters: (one: Full) => readonly number[],
  measurable: (one: Full) => boolean,
): Full[] {
  const limit = best.score + WORTH;
  const rank = (s: Full) => Math.max(s.score, 0.5) + PER_PIGMENT * s.members.length;
  const ranked = sources.filter((s) => s.score <= limit).sort((a, b) => rank(a) - rank(b));
  const chosen: { full: Full; matter: readonly number[] }[] = [];
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
