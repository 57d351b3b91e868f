import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { distinctAlternatives, type ScoredSet } from './alternatives.ts';
import { type AllowedPaints, LEAST_REQUIRED_SHARE } from './constraints.ts';
import { letDownParts } from './let-down.ts';
import {
  type LetDownParts,
  type Mixture,
  type MixtureAnswer,
  type MixturePart,
  REACHABLE_DELTA_E,
  type Share,
} from './mixture-types.ts';
import type { Candidate } from './search/candidate.ts';
import { type CompiledShelf, compileShelf } from './search/compiled-shelf.ts';
import { MixtureEvaluator } from './search/mixture-evaluator.ts';
import { MixtureSearch } from './search/search.ts';
import { type PreservedAxis, TargetMetric } from './search/target-metric.ts';
import type { MixtureSearchOptions } from './search-options.ts';
import { FINE_PARTS, type PartLimits, type WholeParts, WholePartsFinder } from './whole-parts.ts';

export interface MixOptions extends MixtureSearchOptions {
  /** Several times faster and within 0.3 of the full search: for use while the user drags. */
  readonly quick?: boolean;
  readonly limits?: PartLimits;
  /** What to preserve first if the colour is out of reach. */
  readonly keep?: PreservedAxis;
  /** Maximum number of alternatives; default 5. */
  readonly alternatives?: number;
}

/** Scores within this of the best count as equal: they differ only by rounding. */
const TIE = 0.002;
/** CIEDE2000 by which a mixture must change without a pigment for it to be essential. */
const ESSENTIAL_DELTA_E = 3;
/** Maximum score of an alternative's parts above the best parts (CIEDE2000). */
const COARSER = 2;
/** Number of sets considered for whole parts. */
const SOURCES = 400;
/** Number of smaller sets tried if the let-downs of one set are not near enough. */
const LET_DOWN_FROM = 4;

/** Mixture finder for one shelf and one set of constraints, compiled once for all targets. */
export class MixtureFinder {
  private readonly choice: AllowedPaints;
  private readonly shelf: Shelf;
  private readonly options: MixOptions;
  private readonly search: MixtureSearch;
  private readonly divider: WholePartsFinder;
  private readonly plain: CompiledShelf;
  private readonly evaluator: MixtureEvaluator;
  private readonly pasteHeld: Map<number, number>;
  private readonly paste: Float64Array;

  constructor(shelf: Shelf, choice: AllowedPaints, most: number, options: MixOptions) {
    this.choice = choice;
    this.shelf = { ...shelf, paints: choice.paints };
    this.options = options;
    this.pasteHeld = new Map(choice.held.map((i) => [i, LEAST_REQUIRED_SHARE]));
    const plain = compileShelf(choice.paints, shelf);
    this.plain = plain;
    this.evaluator = new MixtureEvaluator(plain);
    const held =
      choice.held.length > 0 ? compileShelf(choice.paints, shelf, this.pasteHeld) : plain;
    this.paste = held.paste;
    const rules = { most, clash: choice.clash, held: choice.held };
    this.search = new MixtureSearch(held, rules, options.stopped);
    this.divider = new WholePartsFinder(plain, options.limits ?? FINE_PARTS);
  }

  /** The answer for one target; null if the search was stopped. */
  answer(target: Lab): MixtureAnswer | null {
    const metric = new TargetMetric(target, this.options.keep);
    const found = this.search.find(metric, this.options.quick);
    if (!found || found.length === 0) return null;
    const sources = found.slice(0, SOURCES).map((one) => this.source(one));
    const best = leastOf(sources);
    const whole = this.divider.best(metric, sources);
    const fewer = (size: number) =>
      sources.filter((one) => one.members.length < size).slice(0, LET_DOWN_FROM);

    // The fewest pigments within 1 of the best, or within 2 of the target.
    const enough = Math.max(best.score + 1, 2);
    let simple = best;
    for (let size = 1; size < best.members.length; size++) {
      const ofSize = found.filter((one) => one.size <= size).map((one) => this.source(one));
      if (ofSize.length === 0 || ofSize[0]!.score > enough) continue;
      simple = leastOf(ofSize);
      break;
    }
    const few = found.filter((one) => one.size <= simple.members.length).slice(0, SOURCES);
    const simpleWhole = this.divider.best(
      metric,
      few.map((one) => this.source(one)),
    );
    const alternatives = this.different(metric, best, sources, whole?.score ?? 0);
    return {
      target,
      ...this.mixture(target, metric, best, whole, fewer(best.members.length)),
      simplest: this.mixture(target, metric, simple, simpleWhole, fewer(simple.members.length)),
      alternatives: alternatives.map((one) => this.mixture(target, metric, one, null, [])),
    };
  }

  /** A candidate as shares of paste including required paints, by ascending index. */
  private source(one: Candidate): ScoredSet {
    const shares = new Map<number, number>();
    let sum = 0;
    for (const [i, member] of one.members.entries())
      sum += Math.exp(one.x[i]!) * this.paste[member]!;
    const free = 1 - LEAST_REQUIRED_SHARE * this.pasteHeld.size;
    for (const [i, member] of one.members.entries())
      shares.set(member, (free * Math.exp(one.x[i]!) * this.paste[member]!) / sum);
    for (const [member, share] of this.pasteHeld)
      shares.set(member, (shares.get(member) ?? 0) + share);
    const members = [...shares.keys()].sort((a, b) => a - b);
    return {
      members,
      shares: members.map((m) => shares.get(m)!),
      score: one.score,
      lab: one.lab,
    };
  }

  /** Alternatives that differ from the best. @param parts score of the best whole parts */
  private different(
    metric: TargetMetric,
    best: ScoredSet,
    sources: readonly ScoredSet[],
    parts: number,
  ): ScoredSet[] {
    const limit = Math.max(parts, REACHABLE_DELTA_E) + COARSER;
    return distinctAlternatives(
      best,
      sources,
      this.options.alternatives ?? 5,
      (one) => this.matters(one),
      (one) => (this.divider.of(metric, one)?.score ?? Number.POSITIVE_INFINITY) <= limit,
    );
  }

  /** Essential members: without one the colour changes by more than {@link ESSENTIAL_DELTA_E}. */
  private matters({ members, shares, lab }: ScoredSet): number[] {
    const { evaluator, plain } = this;
    if (members.length === 1) return [...members];
    return members.filter((gone) => {
      evaluator.n = 0;
      for (const [i, member] of members.entries()) {
        if (member === gone) continue;
        evaluator.members[evaluator.n] = member;
        evaluator.x[evaluator.n++] = Math.log(shares[i]! / plain.paste[member]!);
      }
      evaluator.evaluateColour();
      return deltaE00(lab, [evaluator.L, evaluator.a, evaluator.b]) > ESSENTIAL_DELTA_E;
    });
  }

  /** Assembles a mixture. @param fewer smaller sets to try if the parts need let-downs */
  private mixture(
    target: Lab,
    metric: TargetMetric,
    full: ScoredSet,
    found: WholeParts | null,
    fewer: readonly ScoredSet[],
  ): Mixture {
    const whole = found ?? this.divider.of(metric, full);
    const deltaE = deltaE00(target, full.lab);
    const name = (member: number) => this.choice.paints[member]!.pigment;
    const recipe = this.recipe(full);
    const parts: MixturePart[] = (whole?.members ?? [])
      .map((member, i) => ({ pigment: name(member), parts: whole!.parts[i]! }))
      .sort((a, b) => b.parts - a.parts);
    const partsLab = whole?.lab ?? full.lab;
    return {
      recipe,
      lab: full.lab,
      deltaE00: deltaE,
      reachable: deltaE <= REACHABLE_DELTA_E,
      parts,
      partsLab,
      partsDeltaE00: deltaE00(target, partsLab),
      ...this.letDown(target, [full, ...fewer], parts, deltaE00(target, partsLab)),
    };
  }

  /** Shares with pigment names, largest first. */
  private recipe({ members, shares }: ScoredSet): Share[] {
    return members
      .map((member, i) => ({ pigment: this.choice.paints[member]!.pigment, share: shares[i]! }))
      .sort((a, b) => b.share - a.share);
  }

  /** Let-downs, if the plain parts visibly miss the target or exceed the ratio. */
  private letDown(
    target: Lab,
    from: readonly ScoredSet[],
    parts: readonly MixturePart[],
    plain: number,
  ): Pick<Mixture, 'letDown'> {
    const limits = this.options.limits ?? FINE_PARTS;
    const past = parts.length > 0 && parts[0]!.parts > limits.ratio * parts.at(-1)!.parts;
    if (!past && plain <= REACHABLE_DELTA_E) return {};
    let best: LetDownParts | null = null;
    for (const one of from) {
      const found = letDownParts(target, this.recipe(one), this.shelf, limits);
      if (found && (!best || found.deltaE00 < best.deltaE00)) best = found;
      if (best && best.deltaE00 <= REACHABLE_DELTA_E) break;
    }
    return best && best.deltaE00 < plain + (past ? REACHABLE_DELTA_E : -0.5)
      ? { letDown: best }
      : {};
  }
}

/** The best score; among ties the fewest pigments, then the largest minimum share. */
function leastOf(sources: readonly ScoredSet[]): ScoredSet {
  const limit = Math.min(...sources.map((s) => s.score)) + TIE;
  const least = (s: ScoredSet) => Math.min(...s.shares);
  return sources
    .filter((s) => s.score <= limit)
    .reduce((a, b) => {
      const fewer = a.members.length - b.members.length;
      return fewer > 0 || (fewer === 0 && least(b) > least(a)) ? b : a;
    });
}
