import { expect } from 'vitest';
import { spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import type { MixOptions } from '../../src/mixture/mixture-finder.ts';
import type { MixtureAnswer } from '../../src/mixture/mixture-types.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import type { Shelf } from '../../src/pigment/shelf.ts';
import { delft, munsell, randomRecipes, rit, TWELVE, withPaints } from './data.ts';
import { exhaustive } from './reference.ts';

/** A recipe's colour by the optics alone. */
export function colourOf(shelf: Shelf, recipe: ReadonlyMap<string, number>): Lab {
  const paints = [...recipe.keys()].map(
    (name) => shelf.paints.find((p) => p.pigment === name)!.paint,
  );
  return labOf(addSurface(opaque([...recipe.values()], paints, spectrum<'R'>()), shelf.surface));
}

export function mix(
  targets: readonly Lab[],
  shelf: Shelf,
  options: MixOptions & { most?: number },
): MixtureAnswer[] {
  const found = findMixtures(targets, shelf, { alternatives: 0, ...options });
  if (!found.ok) throw new Error(found.fault.code);
  expect(found.value).toHaveLength(targets.length);
  return found.value;
}

export const first = (shelf: Shelf, count: number): Shelf => ({
  ...shelf,
  paints: shelf.paints.slice(0, count),
});

/** Colours to look for on a shelf, with at most so many pigments. */
export interface Case {
  readonly name: string;
  readonly shelf: Shelf;
  readonly targets: readonly Lab[];
  readonly most: number;
}

/** Colours of the Munsell atlas, and of mixtures, on shelves of measured paints. */
export const cases = (munsells: number, recipes: number): Case[] => [
  ...[
    { name: 'Munsell colours, 12 paints', shelf: withPaints(rit(), TWELVE), seed: 21, most: 4 },
    { name: 'Munsell colours, 10 oils', shelf: delft(), seed: 22, most: 4 },
    { name: 'Munsell colours, 9 paints, up to 6', shelf: first(rit(), 9), seed: 23, most: 6 },
    { name: 'Munsell colours, 16 paints', shelf: first(rit(), 16), seed: 24, most: 4 },
  ].map(({ seed, ...one }) => ({ ...one, targets: munsell(munsells, seed) })),
  {
    name: 'colours of 27 paints on 12 of them',
    shelf: withPaints(rit(), TWELVE),
    targets: randomRecipes(rit(), recipes, 25).map((recipe) => colourOf(rit(), recipe)),
    most: 4,
  },
];

/** Never worse by more than 0.05 than every set tried from several starts; quick within 0.3 for 98 %. */
export function expectNearBest({ shelf, targets, most }: Case): void {
  const references = targets.map((target) => exhaustive(target, shelf, most));
  for (const limit of [2, 3, most]) {
    const gaps = mix(targets, shelf, { most: limit }).map(
      (a, i) => a.deltaE00 - references[i]![limit]!,
    );
    expect(Math.max(...gaps)).toBeLessThan(0.05);
  }
  const quick = mix(targets, shelf, { most, quick: true }).map(
    (a, i) => a.deltaE00 - references[i]![most]!,
  );
  expect(quick.filter((gap) => gap <= 0.3).length / quick.length).toBeGreaterThanOrEqual(0.98);
}

/** The simplest has the fewest pigments within 1 of the best, or within 2 of the target. */
export function expectSimplest(targets: readonly Lab[], shelf: Shelf): void {
  for (const [i, answer] of mix(targets, shelf, {}).entries()) {
    const byCount = exhaustive(targets[i]!, shelf, 4);
    const enough = Math.max(answer.deltaE00 + 1, 2);
    const fewest = byCount.findIndex((best, n) => n > 0 && best <= enough);
    expect(answer.simplest.recipe).toHaveLength(fewest);
    expect(answer.simplest.deltaE00).toBeLessThanOrEqual(enough + 1e-9);
  }
}
