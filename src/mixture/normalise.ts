import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { measuredRecipeOf } from './measured-recipe.ts';
import {
  type Mixture,
  type MixtureAnswer,
  REACHABLE_DELTA_E,
  type Share,
} from './mixture-types.ts';

/**
 * What the painter lays out, as shares: whole parts, with let-downs resolved into their pigments.
 */
export function wholePartShares(mixture: Mixture, shelf: Shelf): readonly Share[] {
  const { pigments } = measuredRecipeOf(mixture, shelf);
  const sum = pigments.reduce((all, one) => all + one.parts, 0);
  if (!(sum > 0)) return mixture.recipe;
  return pigments.map(({ pigment, parts }) => ({ pigment, share: parts / sum }));
}

/** Pigments that the painter lays out for a mixture; its recipe may hold others. */
export const pigmentsOf = (mixture: Mixture, shelf: Shelf): string[] =>
  wholePartShares(mixture, shelf).map(({ pigment }) => pigment);

/** A mixture without the other fields of an answer. */
export function mixtureOnly(mixture: Mixture | MixtureAnswer): Mixture {
  const { recipe, lab, deltaE00, reachable, parts, partsLab, partsDeltaE00, letDown } = mixture;
  return {
    ...{ recipe, lab, deltaE00, reachable, parts, partsLab, partsDeltaE00 },
    ...(letDown ? { letDown } : {}),
  };
}

/** The same mixture with its differences measured from another target. */
export function rescored(wish: Lab, mixture: Mixture): Mixture {
  const difference = deltaE00(wish, mixture.lab);
  const { letDown } = mixture;
  return {
    ...mixture,
    deltaE00: difference,
    reachable: difference <= REACHABLE_DELTA_E,
    partsDeltaE00: deltaE00(wish, mixture.partsLab),
    ...(letDown ? { letDown: { ...letDown, deltaE00: deltaE00(wish, letDown.lab) } } : {}),
  };
}
