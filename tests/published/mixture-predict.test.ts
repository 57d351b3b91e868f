import { expect, test } from 'vitest';
import { predictColour } from '../../src/mixture/predict.ts';
import { delft, rit } from '../mixture/data.ts';
import { describeShared } from '../shared.ts';

// Paints: Y. Okumura, MS thesis, RIT, 2005; R. Wiersma, TU Delft, 2025 (reference data).
describeShared('mixtures foreseen, on published paints', () => {
  // The worked examples of the reference data's own README, computed with plain sampled weights. Its
  // study allows a table of another kind, as ours is, CIELAB 0.2; these two stay under 0.02.
  test.each([
    { shelf: rit, pigment: 'Yellow ochre', lab: [84.02, 5.33, 27.3] },
    { shelf: delft, pigment: 'Bone black', lab: [64.3, -0.1, -5.39] },
  ])('1 $pigment and 4 titanium white have the printed colour', ({ shelf, pigment, lab }) => {
    const amounts = [
      { pigment, amount: 1 },
      { pigment: 'Titanium white', amount: 4 },
    ];
    const off = predictColour(amounts, shelf()).map((value, i) => value - lab[i]!);
    expect(Math.hypot(...off)).toBeLessThan(0.02);
  });
});
