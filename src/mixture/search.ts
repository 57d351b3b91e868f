import { DROPPED, descend } from './descent.ts';
import type { Metric } from './metric.ts';
import type { Stock } from './stock.ts';
import { Trial } from './trial.ts';

/** What a set of pigments may be. */
export interface Rules {
  /** Most pigments in one mixture, held ones included. */
  readonly most: number;
  /** count × count, 1 where two paints never go into one pile. */
  readonly clash: Uint8Array;
  /** Paints that are in every mixture anyway (see the `held` of compile). */
  readonly held: readonly number[];
}

/** The best that one set of pigments can do. */
export interface Candidate {
  /** Indices of the stock, rising. */
  readonly members: readonly number[];
  /** Logarithmic effective amounts, in the same order. */
  x: readonly number[];
  lab: readonly [number, number, number];
  /** The metric's distance: CIEDE2000 unless something else is kept first. */
  score: number;
  /** Pigments counting held ones. */
  readonly size: number;
}

/** A slope that would gain less than this share of the squared difference counts as none. */
const FLAT = 1e-3;
/** Squared difference at which a target counts as met. */
const MET = 2.5e-5;
/** Enough sets that meet the target: no further set can be better, these give the parts their choice. */
const ENOUGH = 160;
/** Where a pinched pigment starts, in effective amount beside a strongest of 1. */
const PINCH = Math.log(0.1);
const BEAM = 24;
/** Beyond this distance the search is done again, thoroughly. */
const NEAR = 0.5;
/** Of sets further than this many times the best, the thorough search tries no larger ones. */
const FAR = 1.15;
/** A descent that slows down further than this many times the best from its target is given up. */
const HOPELESS = 1.5;
/** A member under this effective amount beside a strongest of 1 is hardly there. */
const THIN = Math.log(0.01);
const EQUAL = [0, 0, 0];
/** Lighter targets are tints: equal strengths are far from them. */
const LIGHT = 60;
const TINT = Math.log(0.01);

interface How {
  /** How many sets of each size are extended. */
  readonly beam: number;
  /** Every set of three from equal strengths, larger ones from each subset that a pinch helps. */
  readonly thorough: boolean;
}

export class Search {
  /** Descents made since the search was built: what a run cost. */
  descents = 0;
  private readonly stock: Stock;
  private readonly rules: Rules;
  private readonly trial: Trial;
  private readonly slope: Float64Array;
  /** L of each paint alone. */
  private readonly lightness: Float64Array;

  private readonly stopped: () => boolean;
  private enough = ENOUGH;
  /** Squared difference that a set must promise to come under. */
  private bound = Number.POSITIVE_INFINITY;

  /** @param stopped asked every few hundred descents */
  constructor(stock: Stock, rules: Rules, stopped: () => boolean = () => false) {
    this.stopped = stopped;
    this.stock = stock;
    this.rules = rules;
    this.trial = new Trial(stock);
    this.slope = new Float64Array(stock.count);
    this.lightness = Float64Array.from({ length: stock.count }, (_, i) => {
      this.load([i], [0]);
      this.trial.look();
      return this.trial.L;
    });
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
    this.enough = enough;
    const beam = quick ? BEAM : Number.POSITIVE_INFINITY;
    this.bound = Number.POSITIVE_INFINITY;
    const first = this.levels(metric, this.pairs(metric), { beam, thorough: false });
    if (this.stopped()) return null;
    this.polish(metric, first);
    first.sort(byScore);
    if (quick || first.length === 0 || first[0]!.score < NEAR) return best(first);
    this.bound = (HOPELESS * first[0]!.score) ** 2;
    // Out of reach the difference has several valleys, and one way into a set finds only one.
    const known = first.filter((one) => one.members.length === 2);
    const second = this.levels(metric, known, { beam, thorough: true });
    if (this.stopped()) return null;
    this.polish(metric, second);
    return best([...first, ...second]);
  }

  private levels(metric: Metric, pairs: Candidate[], how: How): Candidate[] {
    const kept: Candidate[][] = [[], this.singles(metric), pairs];
    for (let length = 3; length <= this.rules.most; length++)
      kept[length] = this.grow(metric, kept[length - 1]!, how, this.scores(kept[length - 2]));
    return kept.flat().sort(byScore);
  }

  private singles(metric: Metric): Candidate[] {
    const found: Candidate[] = [];
    for (let i = 0; i < this.stock.count; i++) {
      if (this.sizeOf([i]) > this.rules.most) continue;
      this.load([i], [0]);
      this.trial.evaluate();
      found.push(this.candidate(metric));
    }
    return found;
  }

  /** Every pair, from equal strengths. */
  private pairs(metric: Metric): Candidate[] {
    const { count } = this.stock;
    const found: Candidate[] = [];
    if (this.rules.most < 2) return found;
    for (let a = 0; a < count && !this.stopped(); a++) {
      for (let b = a + 1; b < count; b++) {
        if (this.clash(a, b) || this.sizeOf([a, b]) > this.rules.most) continue;
        const one = this.attempt(metric, [a, b], [0, 0]);
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
      const error = this.pinch(metric, parent, false);
      for (let j = 0; j < this.stock.count; j++) {
        if (!this.joins(parent, j)) continue;
        const members = insert(parent.members, j);
        const key = this.key(members);
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
          keep(this.attempt(metric, members, EQUAL));
          if (metric.target[0] > LIGHT) keep(this.attempt(metric, members, this.tint(members)));
        }
        if (!(this.slope[j]! < -FLAT * error)) continue;
        if (how.thorough ? triples : this.settled(members, parent, smaller)) continue;
        const start = members.map((m) => (m === j ? PINCH : parent.x[parent.members.indexOf(m)]!));
        keep(this.attempt(metric, members, start));
      }
    }
    return [...found.values()];
  }

  /** A start in which the lightest member leads. */
  private tint(members: readonly number[]): number[] {
    const lightest = members.reduce((a, b) => (this.lightness[b]! > this.lightness[a]! ? b : a));
    return members.map((m) => (m === lightest ? 0 : TINT));
  }

  /** Whether a still smaller subset does better than the parent: then its optimum is the set's. */
  private settled(members: readonly number[], parent: Candidate, smaller: Scores): boolean {
    for (let i = 0; i < members.length; i++) {
      for (let j = i + 1; j < members.length; j++) {
        const rest = members.filter((_, k) => k !== i && k !== j);
        const score = smaller.get(this.key(rest));
        if (score !== undefined && score <= parent.score) return true;
      }
    }
    return false;
  }

  private key(members: readonly number[]): number {
    let key = 0;
    for (const member of members) key = key * 64 + member + 1;
    return key;
  }

  private scores(candidates: readonly Candidate[] | undefined): Scores {
    return new Map((candidates ?? []).map((one) => [this.key(one.members), one.score]));
  }

  /** Pigments of which a pinch would bring a set's optimum nearer, steepest first. */
  private better(metric: Metric, parent: Candidate): number[] {
    const { slope } = this;
    const error = this.pinch(metric, parent, true);
    const found: number[] = [];
    for (let j = 0; j < this.stock.count; j++)
      if (slope[j]! < -FLAT * error && this.joins(parent, j)) found.push(j);
    return found.sort((i, j) => slope[i]! - slope[j]!);
  }

  /** Fills {@link slope} at a set's optimum and returns its squared difference. */
  private pinch(metric: Metric, parent: Candidate, exact: boolean): number {
    const { trial, slope } = this;
    this.load(parent.members, parent.x);
    trial.evaluate();
    const m = exact ? metric.local : metric.linear;
    const error = exact
      ? metric.slopes(trial.L, trial.a, trial.b)
      : metric.near(trial.L, trial.a, trial.b);
    const [r0 = 0, r1 = 0, r2 = 0] = metric.r;
    trial.pinch(
      2 * (m[0]! * r0 + m[3]! * r1 + m[6]! * r2),
      2 * (m[1]! * r0 + m[4]! * r1 + m[7]! * r2),
      2 * (m[2]! * r0 + m[5]! * r1 + m[8]! * r2),
      slope,
    );
    return error;
  }

  private joins(parent: Candidate, j: number): boolean {
    const { members } = parent;
    for (let i = 0; i < members.length; i++)
      if (members[i] === j || this.clash(members[i]!, j)) return false;
    return this.sizeOf([...members, j]) <= this.rules.most;
  }

  /** Brings contenders to the optimum of CIEDE2000 itself, then follows any pigment that still helps. */
  private polish(metric: Metric, all: Candidate[]): void {
    let best = Number.POSITIVE_INFINITY;
    const contenders = all.slice(0, 120);
    for (const one of contenders) {
      if (one.score > 1.25 * best + 0.05) break;
      this.refine(metric, one);
      best = Math.min(best, one.score);
    }
    // The simplest mixture asks for the best of every number of pigments.
    for (let size = 1; size < this.rules.most; size++) {
      const some = all.filter((one) => one.size <= size).sort(byScore);
      let least = Number.POSITIVE_INFINITY;
      for (const one of some.slice(0, 60)) {
        if (one.score > 1.25 * least + 0.05) break;
        this.refine(metric, one);
        least = Math.min(least, one.score);
      }
    }
    for (let round = 0; round < 4 && best > 0.005; round++) {
      all.sort(byScore);
      const top = all[0]!;
      let moved = false;
      const take = (one: Candidate | null, limit: number) => {
        if (!one || one.score >= limit) return;
        all.push(one);
        best = Math.min(best, one.score);
        moved ||= one.score < top.score - 1e-4;
      };
      for (const j of this.better(metric, top)) {
        const members = insert(top.members, j);
        const start = members.map((m) => (m === j ? PINCH : top.x[top.members.indexOf(m)]!));
        take(this.attempt(metric, members, start, true), top.score - 1e-4);
      }
      if (round === 0) this.thin(metric, top, take);
      if (!moved) break;
    }
  }

  /** What is left of a set without a pigment that is hardly there. */
  private thin(metric: Metric, top: Candidate, take: Take): void {
    for (let i = 0; i < top.members.length && top.members.length > 2; i++) {
      if (top.x[i]! > THIN) continue;
      const rest = (_: number, k: number) => k !== i;
      take(
        this.attempt(metric, top.members.filter(rest), top.x.filter(rest), true),
        Number.POSITIVE_INFINITY,
      );
    }
  }

  private refine(metric: Metric, one: Candidate): void {
    if (one.members.length === 1 || one.score < 1e-3) return;
    const polished = this.attempt(metric, one.members, one.x, true);
    if (!polished || polished.score >= one.score) return;
    one.x = polished.x;
    one.lab = polished.lab;
    one.score = polished.score;
  }

  private attempt(
    metric: Metric,
    members: readonly number[],
    start: readonly number[],
    exact = false,
  ): Candidate | null {
    this.load(members, start);
    this.descents++;
    if (descend(this.trial, metric, exact, this.bound) === DROPPED) return null;
    return this.candidate(metric);
  }

  private candidate(metric: Metric): Candidate {
    const { trial } = this;
    const members = Array.from(trial.members.subarray(0, trial.n));
    return {
      members,
      x: Array.from(trial.x.subarray(0, trial.n)),
      lab: [trial.L, trial.a, trial.b],
      score: Math.sqrt(metric.exact(trial.L, trial.a, trial.b)),
      size: this.sizeOf(members),
    };
  }

  private load(members: readonly number[], x: readonly number[]): void {
    const { trial } = this;
    trial.n = members.length;
    for (let i = 0; i < members.length; i++) {
      trial.members[i] = members[i]!;
      trial.x[i] = x[i]!;
    }
  }

  private clash(a: number, b: number): boolean {
    return this.rules.clash[a * this.stock.count + b] === 1;
  }

  private sizeOf(members: readonly number[]): number {
    let size = members.length;
    for (const held of this.rules.held) if (!members.includes(held)) size++;
    return size;
  }
}

type Take = (one: Candidate | null, limit: number) => void;
type Scores = ReadonlyMap<number, number>;

const byScore = (a: Candidate, b: Candidate): number =>
  a.score - b.score || a.members.length - b.members.length;

const insert = (members: readonly number[], j: number): number[] =>
  [...members, j].sort((a, b) => a - b);

/** One candidate a set, the better; rising by score. */
function best(all: readonly Candidate[]): Candidate[] {
  const bySet = new Map<string, Candidate>();
  for (const one of all) {
    const key = one.members.join();
    const known = bySet.get(key);
    if (!known || one.score < known.score) bySet.set(key, one);
  }
  return [...bySet.values()].sort(byScore);
}
