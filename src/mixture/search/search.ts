import { Attempts } from './attempts.ts';
import {
  bestOf,
  byScore,
  type Candidate,
  insert,
  keyOf,
  type PigmentConstraints,
} from './candidate.ts';
import type { CompiledShelf } from './compiled-shelf.ts';
import { refineCandidates } from './refine.ts';
import type { TargetMetric } from './target-metric.ts';

/** Squared difference at which a target counts as reached. */
const MET = 2.5e-5;
/**
 * Number of sets that reach the target after which the search ends; whole parts choose among them.
 */
const ENOUGH = 160;
/** Number of sets of each size that the quick search extends. */
const BEAM = 24;
/** Best score above which a second, thorough search runs. */
const NEAR = 0.5;
/** The thorough search does not extend sets with a score above this multiple of the best. */
const FAR = 1.15;
/** A slow descent above this multiple of the best score is abandoned. */
const HOPELESS = 1.5;
const EQUAL = [0, 0, 0];
/** Targets with a larger L* are tints: also start with the lightest paint dominating. */
const LIGHT = 60;
interface SearchMode {
  /** Number of sets of each size that are extended. */
  readonly beam: number;
  /** Also try every set of three from equal strengths, and larger sets from every useful subset. */
  readonly thorough: boolean;
}

type Scores = ReadonlyMap<number, number>;

/**
 * Searches the best mixtures of a stock for a target, over all sets of pigments that can matter.
 */
export class MixtureSearch {
  private readonly attempts: Attempts;
  private readonly stopped: () => boolean;
  private enough = ENOUGH;

  /** @param stopped polled every few hundred descents */
  constructor(
    stock: CompiledShelf,
    rules: PigmentConstraints,
    stopped: () => boolean = () => false,
  ) {
    this.attempts = new Attempts(stock, rules);
    this.stopped = stopped;
  }

  /** Number of descents since construction: the cost of a run. */
  get descents(): number {
    return this.attempts.descents;
  }

  /**
   * The best mixture of every set that can matter for a target, best first. All pairs are tried. A
   * larger set is tried only if adding the pigment improves the optimum of its best subset (the
   * derivative of the difference by its amount is negative); otherwise both have the same optimum.
   * Compared with exhaustive search in tests/mixture/exhaustive.test.ts.
   * @param quick  extends only the best few sets: for dragging, within 0.3 of the full search
   * @param enough number of sets that reach the target after which the search ends
   * @returns null when stopped
   */
  find(metric: TargetMetric, quick = false, enough = ENOUGH): Candidate[] | null {
    const { attempts } = this;
    this.enough = enough;
    const beam = quick ? BEAM : Number.POSITIVE_INFINITY;
    attempts.bound = Number.POSITIVE_INFINITY;
    const first = this.levels(metric, this.pairs(metric), { beam, thorough: false });
    if (this.stopped()) return null;
    refineCandidates(attempts, metric, first);
    first.sort(byScore);
    if (quick || first.length === 0 || first[0]!.score < NEAR) return bestOf(first);
    attempts.bound = (HOPELESS * first[0]!.score) ** 2;
    // Out of reach the difference has several local minima; a single start finds only one.
    const known = first.filter((one) => one.members.length === 2);
    const second = this.levels(metric, known, { beam, thorough: true });
    if (this.stopped()) return null;
    refineCandidates(attempts, metric, second);
    return bestOf([...first, ...second]);
  }

  private levels(metric: TargetMetric, pairs: Candidate[], how: SearchMode): Candidate[] {
    const kept: Candidate[][] = [[], this.singles(metric), pairs];
    for (let length = 3; length <= this.attempts.rules.most; length++)
      kept[length] = this.grow(metric, kept[length - 1]!, how, scoresOf(kept[length - 2]));
    return kept.flat().sort(byScore);
  }

  private singles(metric: TargetMetric): Candidate[] {
    const { attempts } = this;
    const found: Candidate[] = [];
    for (let i = 0; i < attempts.stock.count; i++)
      if (attempts.sizeOf([i]) <= attempts.rules.most) found.push(attempts.single(metric, i));
    return found;
  }

  /** All pairs, starting from equal strengths. */
  private pairs(metric: TargetMetric): Candidate[] {
    const { attempts } = this;
    const { count } = attempts.stock;
    const found: Candidate[] = [];
    for (let a = 0; a < count && !this.stopped(); a++) {
      for (let b = a + 1; b < count; b++) {
        if (attempts.clash(a, b) || attempts.sizeOf([a, b]) > attempts.rules.most) continue;
        const one = attempts.attempt(metric, [a, b], [0, 0]);
        if (one) found.push(one);
      }
    }
    return found;
  }

  /**
   * Sets with one pigment more than the parents, if it helps. The best subset of a set decides: the
   * first parent that generates it, because parents are sorted by score.
   * @param smaller scores by key of sets with one pigment less than the parents
   */
  private grow(
    metric: TargetMetric,
    parents: Candidate[],
    how: SearchMode,
    smaller: Scores,
  ): Candidate[] {
    const { attempts } = this;
    const found = new Map<number, Candidate>();
    const seen = new Set<number>();
    let met = 0;
    let used = 0;
    parents.sort(byScore);
    const limit = how.thorough && parents[0] ? FAR * parents[0].score : Number.POSITIVE_INFINITY;
    for (const parent of parents) {
      if (used++ >= how.beam || met >= this.enough) break;
      if (used % 32 === 0 && this.stopped()) break;
      const triples = parent.members.length === 2;
      if (parent.score > limit && !triples) break;
      const error = attempts.additionSlopes(metric, parent, false);
      for (let j = 0; j < attempts.stock.count; j++) {
        if (!attempts.mayAdd(parent, j)) continue;
        const members = insert(parent.members, j);
        const key = keyOf(members);
        const fresh = !seen.has(key);
        if (!fresh && !how.thorough) continue;
        seen.add(key);
        const keep = (one: Candidate | null) => {
          if (!one || one.score >= parent.score) return;
          const known = found.get(key);
          if (known && known.score <= one.score) return;
          if (one.score * one.score < MET) met++;
          found.set(key, one);
        };
        if (how.thorough && fresh && triples) {
          keep(attempts.attempt(metric, members, EQUAL));
          if (metric.target[0] > LIGHT)
            keep(attempts.attempt(metric, members, attempts.tint(members)));
        }
        if (!attempts.helps(j, error)) continue;
        if (how.thorough ? triples : this.settled(members, parent, smaller)) continue;
        keep(attempts.withPaint(metric, parent, j));
      }
    }
    return [...found.values()];
  }

  /**
   * Whether an even smaller subset beats the parent: then the parent does not decide for the set.
   */
  private settled(members: readonly number[], parent: Candidate, smaller: Scores): boolean {
    for (let i = 0; i < members.length; i++) {
      for (let j = i + 1; j < members.length; j++) {
        const rest = members.filter((_, k) => k !== i && k !== j);
        const score = smaller.get(keyOf(rest));
        if (score !== undefined && score <= parent.score) return true;
      }
    }
    return false;
  }
}

const scoresOf = (candidates: readonly Candidate[] | undefined): Scores =>
  new Map((candidates ?? []).map((one) => [keyOf(one.members), one.score]));
