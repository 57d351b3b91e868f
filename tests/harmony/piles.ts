import fc from 'fast-check';
import { spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import type { Mixture } from '../../src/mixture/mixture-types.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { evenly } from '../evenly.ts';

/** More in a soak run, few by default. */
export const runs = (few: number): number => (process.env.KINGCUP_SOAK === '1' ? 20 * few : few);

/** What a recipe of a shelf looks like, by the optics alone. */
export function labOfRecipe(shelf: Shelf, recipe: Mixture['recipe']): Lab {
  const paints = recipe.map(
    ({ pigment }) => shelf.paints.find((one) => one.pigment === pigment)!.paint,
  );
  const shares = recipe.map(({ share }) => share);
  return labOf(addSurface(opaque(shares, paints, spectrum<'R'>()), shelf.surface));
}

/** A pile as a mixture that is exactly what was wanted. */
export function pileOf(shelf: Shelf, shares: Readonly<Record<string, number>>): Mixture {
  const sum = Object.values(shares).reduce((a, b) => a + b, 0);
  const recipe = Object.entries(shares)
    .map(([pigment, share]) => ({ pigment, share: share / sum }))
    .toSorted((p, q) => q.share - p.share);
  const lab = labOfRecipe(shelf, recipe);
  return {
    recipe,
    lab,
    deltaE00: 0,
    reachable: true,
    parts: recipe.map(({ pigment, share }) => ({
      pigment,
      parts: Math.max(1, Math.round(16 * share)),
    })),
    partsLab: lab,
    partsDeltaE00: 0,
  };
}

/** Random piles of one to four pigments: every colour of a shelf's reach, and no other. */
export const pilesOf = (shelf: Shelf): fc.Arbitrary<Mixture> =>
  fc
    .uniqueArray(fc.integer({ min: 0, max: shelf.paints.length - 1 }), {
      minLength: 1,
      maxLength: 4,
    })
    .chain((members) =>
      fc
        .tuple(...members.map(() => evenly(-3, 3)))
        .map((logs) =>
          pileOf(
            shelf,
            Object.fromEntries(
              members.map((m, i) => [shelf.paints[m]!.pigment, Math.exp(logs[i]!)]),
            ),
          ),
        ),
    );
