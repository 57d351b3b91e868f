import type { Lab } from '../colour/lab.ts';
import type { Constraints } from '../mixture/constraints.ts';
import { nearestColourFinder } from '../mixture/nearest-colour.ts';
import { reachingSets } from '../mixture/reaching-sets.ts';
import {
  invalidColourFault,
  type MixFault,
  type MixtureSearchOptions,
} from '../mixture/search-options.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { fail, ok, type Result } from '../result.ts';
import { type PigmentSet, PigmentSetSearch } from './pigment-set-search.ts';
import {
  VARIANT_WAYS,
  type VariantAmount,
  type VariantWay,
  variantTarget,
} from './variant-target.ts';

/** One colour that a palette has to mix: a colour of the harmony, or a variant of one. */
interface FewestTarget {
  /** Index of the harmony's colour. */
  readonly of: number;
  /** null for the colour itself. */
  readonly way: VariantWay | null;
  readonly lab: Lab;
}

/** The best result with `count` pigments. */
export interface FewestStep {
  readonly count: number;
  readonly pigments: readonly string[];
  /** CIEDE2000 of each target, in their order. */
  readonly deltaE00: readonly number[];
  readonly worst: number;
  readonly mean: number;
}

/** The limited palette of a harmony, as a curve over the number of pigments. */
export interface Fewest {
  /** The targets: the harmony's colours in order, then their variants. */
  readonly sought: readonly FewestTarget[];
  /** From one pigment until a further one no longer helps; the mean difference never rises. */
  readonly curve: readonly FewestStep[];
  /** The first step of the curve within the requested difference; null if none is. */
  readonly enough: FewestStep | null;
  /** Difference of each target with the whole shelf: beyond `within`, a colour is out of reach. */
  readonly shelf: readonly number[];
}

export interface FewestOptions extends MixtureSearchOptions {
  /**
   * Requested difference, CIEDE2000; default 2. A colour that even the whole shelf misses by more
   * only has to come within 1 of the shelf's best.
   */
  readonly within?: number;
  /** Also mix the variants of each colour: all six ways, by this amount. */
  readonly variants?: VariantAmount;
  /** Most pigments to try; default 12. */
  readonly longest?: number;
}

/** Smallest visible gain (CIEDE2000): a pigment that gains less does not help. */
const SEEN = 0.1;
/** Extra difference allowed for a colour out of the shelf's reach. */
const LOSS = 1;
/** Share of the work spent on the whole shelf, for the progress report. */
const FIRST = 0.7;

/**
 * The fewest pigments that mix all colours of a harmony, and their variants if requested, as a
 * curve: the limited palette of the old studios, computed. A beam search grows each set from the
 * best smaller ones and by exchanges, scored by which mixtures it contains; the figures of the
 * curve come from a fresh search. Pigments that the constraints require are in every set.
 * @param colours CIELAB under D65
 * @returns the curve, or a fault if the colours or constraints are invalid or the job is stopped
 */
export function fewest(
  colours: readonly Lab[],
  shelf: Shelf,
  options: FewestOptions = {},
): Result<Fewest, MixFault> {
  const { within = 2, most = 4, longest = 12, constraints = {}, stopped, onProgress } = options;
  const odd = invalidColourFault(colours);
  if (odd) return odd;
  const sought = fewestTargets(colours, options.variants);
  const labs = sought.map(({ lab }) => lab);
  const sets = reachingSets(labs, shelf, most, {
    constraints,
    ...(stopped ? { stopped } : {}),
    onProgress: (done) => onProgress?.(FIRST * done),
  });
  if (!sets.ok) return sets;
  const judge = new PigmentSetSearch(sets.value, shelf, constraints);
  const curve: FewestStep[] = [];
  let palettes: PigmentSet[] = [judge.first];
  const held = judge.first.members.length;
  const last = Math.min(Math.max(longest, held), judge.names.length);
  for (let count = Math.max(1, held); count <= last; count++) {
    if (stopped?.()) return fail({ code: 'stopped' });
    if (count > held) palettes = judge.longer(palettes);
    const names = judge.namesOf(palettes[0]!);
    const step = stepOf(labs, shelf, names, most, constraints, stopped);
    if (!step) return fail({ code: 'stopped' });
    const before = curve.at(-1);
    // A larger set mixes no worse than a smaller one: if the search found it worse, keep the
    // smaller.
    if (before && step.mean > before.mean) {
      curve.push({ ...before, count, pigments: [...before.pigments, ...extra(before, names)] });
    } else curve.push(step);
    onProgress?.(FIRST + ((1 - FIRST) * count) / last);
    const now = curve.at(-1)!;
    if (now.deltaE00.every((d, i) => d <= judge.shelf[i]! + SEEN)) break;
  }
  const fits = (step: FewestStep) =>
    step.deltaE00.every((d, i) => d <= Math.max(within, judge.shelf[i]! + LOSS * outside(i)));
  const outside = (i: number) => (judge.shelf[i]! > within ? 1 : 0);
  return ok({ sought, curve, enough: curve.find(fits) ?? null, shelf: judge.shelf });
}

/** The colours, then their variants in all six ways; a way that changes nothing is omitted. */
function fewestTargets(colours: readonly Lab[], amount: VariantAmount | undefined): FewestTarget[] {
  const own = colours.map((lab, of): FewestTarget => ({ of, way: null, lab }));
  if (amount === undefined) return own;
  const changed = (lab: Lab, other: Lab) => lab.some((v, i) => Math.abs(v - other[i]!) > 1e-6);
  const varied = colours.flatMap((from, of) =>
    VARIANT_WAYS.map(
      (way): FewestTarget => ({ of, way, lab: variantTarget(from, way, amount).lab }),
    ).filter(({ lab }) => changed(lab, from)),
  );
  return [...own, ...varied];
}

/** One pigment to fill up a set, for the rare step where the larger search found nothing better. */
const extra = (before: FewestStep, names: readonly string[]): string[] =>
  names.filter((name) => !before.pigments.includes(name)).slice(0, 1);

function stepOf(
  colours: readonly Lab[],
  shelf: Shelf,
  names: readonly string[],
  most: number,
  constraints: Constraints,
  stopped?: () => boolean,
): FewestStep | null {
  const on = nearestColourFinder(shelf, most, { ...constraints, inStock: names }, stopped);
  if (!on.ok) return null;
  const deltaE00: number[] = [];
  for (const lab of colours) {
    const near = on.value.of(lab);
    if (!near) return null;
    deltaE00.push(near.deltaE00);
  }
  return {
    count: names.length,
    pigments: names,
    deltaE00,
    worst: Math.max(...deltaE00),
    mean: deltaE00.reduce((sum, d) => sum + d, 0) / deltaE00.length,
  };
}
