import { type HazardLevel, pigmentOf } from '../pigment/facts.ts';
import { baseOf } from '../pigment/mixable.ts';
import type { Shelf } from '../pigment/shelf.ts';
import type { Constraints } from './constraint.ts';
import type { MixOptions } from './finder.ts';
import { avoidedPairs, hazardous, ofFamily } from './known.ts';
import type { Keep } from './metric.ts';
import { COARSE } from './parts.ts';

/** What a painter asks of all mixtures, in the painter's own terms. */
export interface Wish {
  /** The only pigments at hand, as a small palette has them; null for the whole shelf. */
  readonly only: readonly string[] | null;
  readonly leaveOut: readonly string[];
  /** Pigments this dangerous or more are left out; null leaves none out. */
  readonly hazard: Exclude<HazardLevel, 'low'> | null;
  readonly mustHold: readonly string[];
  readonly noBlack: boolean;
  /** Most pigments in a pile. */
  readonly most: number;
  /** Twelve parts in all instead of thirty-two. */
  readonly coarse: boolean;
  /** What to keep first where a colour is out of reach. */
  readonly keep: Keep;
}

/** Nothing asked for. */
export const NO_WISH: Wish = {
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
 * A wish as constraints on a shelf. What is known of our own pigments holds without being asked for:
 * pairs that spoil each other never meet in one pile, and one pile has one white. Of the pigments of
 * a stranger's file nothing is known, and nothing is kept from them.
 * @param dangerous further pigments of the shelf that the wish's hazard leaves out
 */
export function constraintsOf(
  shelf: Shelf,
  wish: Wish,
  dangerous: readonly string[] = [],
): Constraints {
  const { only, leaveOut, hazard, mustHold, noBlack } = wish;
  const whites = ofFamily(shelf, 'white').filter((pigment) => pigmentOf(baseOf(pigment)));
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

/** A wish as options of the search. */
export function mixOptionsOf(
  shelf: Shelf,
  wish: Wish,
  dangerous: readonly string[] = [],
): Pick<MixOptions, 'most' | 'constraints' | 'keep' | 'limits'> {
  return {
    most: wish.most,
    constraints: constraintsOf(shelf, wish, dangerous),
    keep: wish.keep,
    ...(wish.coarse ? { limits: COARSE } : {}),
  };
}
