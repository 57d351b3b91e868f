import type { Lab } from '../colour/lab.ts';

/** CIEDE2000 up to which a mixture reaches its target. */
export const REACHABLE_DELTA_E = 1;

/** One pigment of a recipe; shares of a recipe sum to 1. */
export interface Share {
  readonly pigment: string;
  readonly share: number;
}

/** One pigment of a recipe in whole parts by volume. */
export interface MixturePart {
  readonly pigment: string;
  readonly parts: number;
}

/** A pigment weakened with white in a separate pile, so that small amounts can be measured. */
export interface LetDown {
  readonly pigment: string;
  readonly white: string;
  /** Parts of pigment and of white in the let-down pile. */
  readonly parts: 1;
  readonly whiteParts: number;
}

/** Whole parts with some pigments as let-downs. */
export interface LetDownParts {
  readonly letDowns: readonly LetDown[];
  /** `letDown` marks a part that is taken from the let-down pile of that pigment. */
  readonly parts: readonly (MixturePart & { readonly letDown: boolean })[];
  readonly lab: Lab;
  readonly deltaE00: number;
}

/** A mixture and its predicted colours (CIELAB, D65). */
export interface Mixture {
  readonly recipe: readonly Share[];
  /** Predicted colour of `recipe`. */
  readonly lab: Lab;
  /** CIEDE2000 from the target to `lab`. */
  readonly deltaE00: number;
  /** Whether `deltaE00` is at most {@link REACHABLE_DELTA_E}. */
  readonly reachable: boolean;
  /** Whole parts, chosen among near-equal recipes; may have other pigments than `recipe`. */
  readonly parts: readonly MixturePart[];
  readonly partsLab: Lab;
  readonly partsDeltaE00: number;
  /**
   * Set if a pigment is below one part and no plain parts come as near within the measurable ratio;
   * then shown instead of `parts`. May have fewer pigments.
   */
  readonly letDown?: LetDownParts;
}

/** The result for one target. */
export interface MixtureAnswer extends Mixture {
  readonly target: Lab;
  /** The mixture of the fewest pigments that is nearly as good: shown first. */
  readonly simplest: Mixture;
  readonly alternatives: readonly Mixture[];
}
