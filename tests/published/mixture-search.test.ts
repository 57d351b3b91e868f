import { expect, test, vi } from 'vitest';
import type { MixtureAnswer } from '../../src/mixture/mixture-types.ts';
import { delft, randomRecipes, rit, TWELVE, withPaints } from '../mixture/data.ts';
import { colourOf, first, mix } from '../mixture/exhaustive.ts';
import { describeShared } from '../shared.ts';

const SOAK = process.env.KINGCUP_SOAK === '1';
if (SOAK) vi.setConfig({ testTimeout: 1_800_000 });

// K and S: Y. Okumura, MS thesis, Rochester Institute of Technology, 2005 (acrylic), and
// R. Wiersma, TU Delft, 2025 (oil), as they stand in the reference data. The bars are those of the
// Kubelka-Munk study beside the data, section 2: of colours mixed from the same stock, up to 4 pigments
// under 0.1 for 99 %, up to 3 under 1 for 95 %, up to 2 under 1 for 60 %.
describeShared('mixtures of published paints', () => {
  const share = (answers: readonly MixtureAnswer[], under: number) =>
    answers.filter((a) => a.deltaE00 < under).length / answers.length;

  test.each([
    { name: '12 acrylic colours', shelf: withPaints(rit(), TWELVE) },
    { name: '24 acrylic colours', shelf: first(rit(), 24) },
    { name: '10 oil colours', shelf: delft() },
  ])('recipes of two to four of $name', ({ shelf }) => {
    const targets = randomRecipes(shelf, SOAK ? 200 : 40, 11).map((recipe) =>
      colourOf(shelf, recipe),
    );
    expect(share(mix(targets, shelf, { most: 4 }), 0.1)).toBeGreaterThanOrEqual(0.99);
    expect(share(mix(targets, shelf, { most: 3 }), 1)).toBeGreaterThanOrEqual(0.95);
    expect(share(mix(targets, shelf, { most: 2 }), 1)).toBeGreaterThanOrEqual(0.6);
  });
});
