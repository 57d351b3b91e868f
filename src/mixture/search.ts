import { Attempts } from './attempts.ts';
import { bestOf, byScore, type Candidate, insert, keyOf, type Rules } from './candidate.ts';
import type { Metric } from './metric.ts';
import { polish } from './polish.ts';
import type { Stock } from './stock.ts';

/** Squared difference at which a target counts as met. */
const MET = 2.5e-5;
/** Enough sets that meet the target: no further set can be better, these give the parts their choice. */
const ENOUGH = 160;
const BEAM = 24;
/** Beyond this distance the search is done again, thoroughly. */
const NEAR = 0.5;
/** Of sets further than this many times the best, the thorough search tries no larger ones. */
const FAR = 1.15;
/** A descent that slows down further than this many times the best from its target is given up. */
const HOPELESS = 1.5;
const EQUAL = [0, 0, 0];
/** Lighter targets are tints: equal strengths are far from them. */
const LIGHT = 60;
interface How {
  /** How many sets of each size are extended. */
  readonly beam: number;
  /** Every set of three from equal strengths, larger ones from each subset that a pinch helps. */
  readonly thorough: boolean;
}

type Scores = ReadonlyMap<number, number>;

export class Search {
  private readonly attempts: Attempts;
  private readonly stopped: () => boolean;
  private enough = ENOUGH;

  /** @param stopped asked every few hundred descents */
  constructor(stock: Stock, rules: Rules, stopped: () => boolean = () => false) {
    this.attempts = new Attempts(stock, rules);
    this.stopped = stopped;
  }

  /** Descents made since the search was built: what a run cost. */
  get descents(): number {
    return this.attempts.descents;
  }

  /**
   * The best of every set that can matter for a target, best first. All pairs are tried; a larger
   * set only where the optimum of its best subset says that one pigment more would help (the slope
   * of the difference by a pinch of it is negative). Where it says not, the optimum of the larger
   * set is that of the smaller. Measured against trying every set: see tests/published.
   * @param quick extends only the best few sets: for dragging, within 0.3 of the whole search
   * @param enough sets that meet the target before the search is content; more give more choice
   * @returns null when stopped
   */
  find(metric: Metric, quick = false, enough = ENOUGH): Candidate[] | null {
    const { attempts } = this;
    this.enough = enough;
    const beam = quick ? BEAM : Number.POSITIVE_INFINITY;
    attempts.bound = Number.POSITIVE_INFINITY;
    const first = this.levels(metric, this.pairs(metric), { beam, thorough: false });
    if (this.stopped()) return null;
    polish(attempts, metric, first);
    first.sort(byScore);
    if (quick || first.length === 0 || first[0]!.score < NEAR) return bestOf(first);
    attempts.bound = (HOPELESS * first[0]!.score) ** 2;
    // Out of reach the difference has several valleys, and one way into a set finds only one.
    const known = first.filter((one) => one.members.length === 2);
    const second = this.levels(metric, known, { beam, thorough: true });
    if (this.stopped()) return null;
    polish(attempts, metric, second);
    return bestOf([...first, ...second]);
  }

  private levels(metric: Metric, pairs: Candidate[], how: How): Candidate[] {
    const kept: Candidate[][] = [[], this.singles(metric), pairs];
    for (let length = 3; length <= this.attempts.rules.most; length++)
      kept[length] = this.grow(metric, kept[length - 1]!, how, scoresOf(kept[length - 2]));
    return kept.flat().sort(byScore);
  }

  private singles(metric: Metric): Candidate[] {
    const { attempts } = this;
    const found: Candidate[] = [];
    for (let i = 0; i < attempts.stock.count; i++)
      if (attempts.sizeOf([i]) <= attempts.rules.most) found.push(attempts.single(metric, i));
    return found;
  }

  /** Every pair, from equal strengths. */
  private pairs(metric: Metric): Candidate[] {
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
   * Sets with one pigment more than the parents, where it would help. A set is judged by its best
   * subset: the first parent that meets it, because parents come best first.
   * @param smaller sets with fewer pigments than the parents, by key: they may be the best subset
   */
  private grow(metric: Metric, parents: Candidate[], how: How, smaller: Scores): Candidate[] {
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
      const error = attempts.pinch(metric, parent, false);
      for (let j = 0; j < attempts.stock.count; j++) {
        if (!attempts.joins(parent, j)) continue;
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
        keep(attempts.with(metric, parent, j));
      }
    }
    return [...found.values()];
  }

  /** Whether a still smaller subset does better than the parent: then its optimum is the set's. */
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
