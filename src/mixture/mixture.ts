import type { Lab } from '../colour/lab.ts';

/** A mixture counts as reaching its target up to this CIEDE2000. */
export const REACH = 1;

/** One pigment of a recipe; shares of a recipe sum to 1. */
export interface Share {
  readonly pigment: string;
  readonly share: number;
}

/** One pigment of a recipe in whole parts by volume. */
export interface Part {
  readonly pigment: string;
  readonly parts: number;
}

/** A pigment weakened with white, in a pile of its own, so that a little of it can be measured. */
export interface LetDown {
  readonly pigment: string;
  readonly white: string;
  /** Parts of pigment and of white in the let-down pile. */
  readonly parts: 1;
  readonly whiteParts: number;
}

/** Whole parts in which some pigments come as let-downs. */
export interface LetDownParts {
  readonly letDowns: readonly LetDown[];
  /** `letDown` marks a part that is taken from the let-down pile of that pigment. */
  readonly parts: readonly (Part & { readonly letDown: boolean })[];
  readonly lab: Lab;
  readonly deltaE00: number;
}

/** Something that can be mixed, and what it is expected to look like. */
export interface Mixture {
  readonly recipe: readonly Share[];
  /** Predicted colour of `recipe`. */
  readonly lab: Lab;
  /** CIEDE2000 from the target to `lab`. */
  readonly deltaE00: number;
  /** `deltaE00` at most {@link REACH}. */
  readonly reachable: boolean;
  /** Chosen on its own among the near-equal recipes; perhaps of other pigments than `recipe`. */
  readonly parts: readonly Part[];
  readonly partsLab: Lab;
  readonly partsDeltaE00: number;
  /**
   * Where a pigment falls under one part and no plain parts come as near, or only such as pass the
   * ratio that a bench can measure; then this is what the bench shows. Perhaps of fewer pigments.
   */
  readonly letDown?: LetDownParts;
}

/** The answer for one target. */
export interface Answer extends Mixture {
  readonly target: Lab;
  /** The fewest pigments that are nearly as good: what a screen shows first. */
  readonly simplest: Mixture;
  readonly alternatives: readonly Mixture[];
}
