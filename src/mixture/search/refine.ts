import type { Attempts } from './attempts.ts';
import { byScore, type Candidate } from './candidate.ts';
import type { TargetMetric } from './target-metric.ts';

/** Log effective amount, relative to the strongest, below which a member is negligible. */
const THIN = Math.log(0.01);
/** Whether a candidate is near enough to the best to be refined. */
const contends = (score: number, best: number): boolean => score <= 1.25 * best + 0.05;
const CONTENDERS = 120;
const CONTENDERS_OF_SIZE = 60;
/** Score below which no gain is possible. */
const DONE = 0.005;
const ROUNDS = 4;
const GAIN = 1e-4;

/**
 * Refines the best candidates to the optimum of CIEDE2000 itself, for every number of pigments
 * (needed for the simplest mixture), then tries to add further pigments to the best.
 * @param all sorted by score; changed in place and extended
 */
export function refineCandidates(attempts: Attempts, metric: TargetMetric, all: Candidate[]): void {
  let best = refineSome(attempts, metric, all.slice(0, CONTENDERS));
  for (let size = 1; size < attempts.rules.most; size++) {
    const some = all.filter((one) => one.size <= size).sort(byScore);
    refineSome(attempts, metric, some.slice(0, CONTENDERS_OF_SIZE));
  }
  for (let round = 0; round < ROUNDS && best > DONE; round++) {
    all.sort(byScore);
    const top = all[0]!;
    const limit = top.score - GAIN;
    for (const j of attempts.helpfulPaints(metric, top)) {
      const one = attempts.withPaint(metric, top, j, true);
      if (one && one.score < limit) all.push(one);
    }
    if (round === 0) all.push(...withoutNegligible(attempts, metric, top));
    best = Math.min(...all.map((one) => one.score));
    if (best >= limit) break;
  }
}

/** Refines the contenders among candidates sorted by score; returns the best score. */
function refineSome(attempts: Attempts, metric: TargetMetric, some: readonly Candidate[]): number {
  let best = Number.POSITIVE_INFINITY;
  for (const one of some) {
    if (!contends(one.score, best)) break;
    refine(attempts, metric, one);
    best = Math.min(best, one.score);
  }
  return best;
}

function refine(attempts: Attempts, metric: TargetMetric, one: Candidate): void {
  if (one.members.length === 1 || one.score < 1e-3) return;
  const polished = attempts.attempt(metric, one.members, one.x, true);
  if (!polished || polished.score >= one.score) return;
  one.x = polished.x;
  one.lab = polished.lab;
  one.score = polished.score;
}

/** Candidates without one negligible pigment of a set. */
function withoutNegligible(
  attempts: Attempts,
  metric: TargetMetric,
  { members, x }: Candidate,
): Candidate[] {
  if (members.length < 3) return [];
  return members.flatMap((_, i) => {
    if (x[i]! > THIN) return [];
    const rest = (_: number, k: number) => k !== i;
    const one = attempts.attempt(metric, members.filter(rest), x.filter(rest), true);
    return one ? [one] : [];
  });
}
