import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import type { Share } from '../../src/mixture/mixture-types.ts';
import { predictColour } from '../../src/mixture/predict.ts';
import { invented } from './invented.ts';

const colour = (recipe: readonly Share[]): Lab =>
  predictColour(
    recipe.map(({ pigment, share }) => ({ pigment, amount: share })),
    invented,
  );

/** Pigments of a recipe whose absence anybody sees: without them the colour is more than 3 away. */
const missed = (recipe: readonly Share[]): string[] =>
  recipe
    .map(({ pigment }) => pigment)
    .filter((gone) => {
      const rest = recipe.filter(({ pigment }) => pigment !== gone);
      return rest.length === 0 || deltaE00(colour(recipe), colour(rest)) > 3;
    });

// By design: of two mixtures that differ in a trace of something, a painter is shown one.
test('alternatives differ from the mixture and from each other in pigments that would be missed', () => {
  const targets: Lab[] = [
    [55, 2, 3],
    [40, 30, 20],
    [70, -10, 40],
    [62, 18, 34],
    [35, 4, -12],
    [78, 3, 12],
  ];
  const found = findMixtures(targets, invented, { quick: true });
  if (!found.ok) throw new Error(found.fault.code);
  let compared = 0;
  for (const answer of found.value) {
    const all = [answer, ...answer.alternatives].map(({ recipe }) => recipe);
    for (const one of all)
      for (const other of all) {
        if (one === other) continue;
        const others = other.map(({ pigment }) => pigment);
        expect(missed(one).filter((pigment) => !others.includes(pigment))).not.toEqual([]);
        compared++;
      }
  }
  expect(compared).toBeGreaterThan(10);
});
