import { pigmentOfPaint } from '../pigment/mixing-shelf.ts';
import { type HazardLevel, pigmentOf } from '../pigment/pigment-facts.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { Constraints } from './constraints.ts';
import type { MixOptions } from './mixture-finder.ts';
import type { PreservedAxis } from './search/target-metric.ts';
import { avoidedPairs, hazardous, ofFamily } from './shelf-rules.ts';
import { COARSE_PARTS } from './whole-parts.ts';

/** The user's mixing preferences, as set on screen. */
export interface MixingPreferences {
  /** The only pigments to use, for a small palette; null for the whole shelf. */
  readonly only: readonly string[] | null;
  readonly leaveOut: readonly string[];
  /** Excludes pigments of this hazard level or above; null excludes none. */
  readonly hazard: Exclude<HazardLevel, 'low'> | null;
  readonly mustHold: readonly string[];
  readonly noBlack: boolean;
  /** Maximum number of pigments in a mixture. */
  readonly most: number;
  /** At most 12 parts in all instead of 32. */
  readonly coarse: boolean;
  /** What to preserve first if a colour is out of reach. */
  readonly keep: PreservedAxis;
}

/** Default preferences. */
export const DEFAULT_PREFERENCES: MixingPreferences = {
  only: null,
  leaveOut: [],
  hazard: null,
  mustHold: [],
  noBlack: false,
  most: 4,
  coarse: false,
  keep: 'nearest',
};

/**
 * Converts preferences to constraints on a shelf. Rules from our pigment facts always apply:
 * incompatible pairs are not mixed, and a mixture has at most one white. Pigments without facts,
 * such as those of an imported file, are not restricted.
 * @param dangerous further pigments of the shelf that the hazard level excludes
 */
export function constraintsOf(
  shelf: Shelf,
  wish: MixingPreferences,
  dangerous: readonly string[] = [],
): Constraints {
  const { only, leaveOut, hazard, mustHold, noBlack } = wish;
  const whites = ofFamily(shelf, 'white').filter((pigment) => pigmentOf(pigmentOfPaint(pigment)));
  return {
    apart: avoidedPairs(shelf),
    oneWhite: whites,
    leaveOut: [
      ...leaveOut,
      ...(hazard === null ? [] : [...hazardous(shelf, hazard), ...dangerous]),
    ],
    ...(only === null ? {} : { inStock: only }),
    ...(mustHold.length > 0 ? { mustHold } : {}),
    ...(noBlack ? { noBlack: ofFamily(shelf, 'black') } : {}),
  };
}

/** Converts preferences to options of the search. */
export function mixOptionsOf(
  shelf: Shelf,
  wish: MixingPreferences,
  dangerous: readonly string[] = [],
): Pick<MixOptions, 'most' | 'constraints' | 'keep' | 'limits'> {
  return {
    most: wish.most,
    constraints: constraintsOf(shelf, wish, dangerous),
    keep: wish.keep,
    ...(wish.coarse ? { limits: COARSE_PARTS } : {}),
  };
}
