import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { seeded } from '../colour/random.ts';
import { describeShared } from '../shared.ts';
import { delft, munsell, randomRecipes, rit, TWELVE, withPaints } from './data.ts';
import { cases, colourOf, expectNearBest, expectSimplest, first, mix } from './exhaustive.ts';

// Paints: Y. Okumura, MS thesis, RIT, 2005; R. Wiersma, TU Delft, 2025 (reference data). More colours,
// and shelves of 16 and 24: tests/simulation/mixture-exhaustive.test.ts.
describeShared('mixtures of measured paints', () => {
  const twelve = withPaints(rit(), TWELVE);

  test.each(cases(3, 4).filter(({ shelf }) => shelf.paints.length <= 12))(
    '$name: never worse than every set by more than 0.05; quick within 0.3',
    expectNearBest,
  );

  test('the simplest has the fewest pigments within 1 of the best or 2 of the target', () => {
    expectSimplest(munsell(4, 27), twelve);
  });

  test.each([
    { name: '12 acrylic colours', shelf: twelve },
    { name: '24 acrylic colours', shelf: first(rit(), 24) },
    { name: '10 oil colours', shelf: delft() },
  ])(
    '$name: the printed colour and difference are those of the recipe and of the parts',
    ({ shelf }) => {
      const targets = randomRecipes(shelf, 5, 11).map((recipe) => colourOf(shelf, recipe));
      for (const [i, answer] of mix(targets, shelf, {}).entries()) {
        for (const one of [answer, answer.simplest]) {
          const lab = colourOf(shelf, new Map(one.recipe.map((s) => [s.pigment, s.share])));
          const parts = colourOf(shelf, new Map(one.parts.map((s) => [s.pigment, s.parts])));
          expect(deltaE00(lab, one.lab)).toBeLessThan(1e-6);
          expect(deltaE00(parts, one.partsLab)).toBeLessThan(1e-6);
          expect(one.deltaE00).toBe(deltaE00(targets[i]!, one.lab));
          expect(one.partsDeltaE00).toBe(deltaE00(targets[i]!, one.partsLab));
        }
      }
    },
  );

  test('colours that no surface has are answered with the nearest, alike every time', () => {
    const next = seeded(31);
    const targets: Lab[] = Array.from({ length: 6 }, () => [
      100 * next(),
      200 * next() - 100,
      200 * next() - 100,
    ]);
    const answers = mix(targets, twelve, {});
    expect(answers).toEqual(mix(targets, twelve, {}));
    for (const answer of answers) expect(answer.reachable).toBe(answer.deltaE00 <= 1);
    expect(answers.filter(({ reachable }) => !reachable).length).toBeGreaterThanOrEqual(4);
  });
});
