import { expect, test, vi } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { munsell, randomRecipes, rit, TWELVE, withPaints } from '../mixture/data.ts';
import {
  cases,
  colourOf,
  expectNearBest,
  expectSimplest,
  first,
  mix,
} from '../mixture/exhaustive.ts';
import { exhaustive } from '../mixture/reference.ts';
import { describeShared } from '../shared.ts';

const SOAK = process.env.KINGCUP_SOAK === '1';
vi.setConfig({ testTimeout: SOAK ? 1_800_000 : 600_000 });

// Not a simulation of paint but of a search without cuts: what tests/mixture/exhaustive.test.ts checks
// on a few colours, here on more of them and on larger shelves.
describeShared('against trying every set from several starts', () => {
  test.each(cases(SOAK ? 200 : 15, SOAK ? 100 : 20))(
    '$name: never worse by more than 0.05; quick within 0.3 for 98 %',
    expectNearBest,
  );

  test('24 paints: never worse by more than 0.05', () => {
    const shelf = first(rit(), 24);
    const targets = munsell(SOAK ? 40 : 3, 26);
    for (const [i, answer] of mix(targets, shelf, {}).entries())
      expect(answer.deltaE00 - exhaustive(targets[i]!, shelf, 4, 2)[4]!).toBeLessThan(0.05);
  });

  test('the simplest has the fewest pigments within 1 of the best or 2 of the target', () => {
    expectSimplest(munsell(10, 27), withPaints(rit(), TWELVE));
  });

  test('the printed difference of 20 recipes of 24 paints is that of their colour', () => {
    const shelf = first(rit(), 24);
    const targets = randomRecipes(shelf, 20, 11).map((recipe) => colourOf(shelf, recipe));
    for (const [i, answer] of mix(targets, shelf, {}).entries())
      expect(answer.deltaE00).toBe(deltaE00(targets[i]!, answer.lab));
  });
});
