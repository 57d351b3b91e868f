import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { correctPile } from '../../src/mixture/correct-pile.ts';
import type { MixturePart } from '../../src/mixture/mixture.ts';
import { ofParts, predictColour } from '../../src/mixture/predict.ts';
import { seeded } from '../colour/random.ts';
import { delft, randomRecipes, rit, TWELVE, withPaints } from '../mixture/data.ts';
import { describeShared } from '../shared.ts';

const COUNT = process.env.KINGCUP_SOAK === '1' ? 200 : 30;

// Paints: Y. Okumura, MS thesis, RIT, 2005; R. Wiersma, TU Delft, 2025 (reference data).
describeShared('the bench, on published paints', () => {
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

  test.each([
    { name: '12 acrylic colours', from: () => withPaints(rit(), TWELVE) },
    { name: '10 oil colours', from: delft },
  ])('$name: a batch with one part wrong is brought back within 1', ({ from }) => {
    const shelf = from();
    const next = seeded(41);
    for (const recipe of randomRecipes(shelf, COUNT, 42)) {
      const meant: MixturePart[] = [...recipe].map(([pigment, parts]) => ({ pigment, parts }));
      const wrong = Math.floor(next() * meant.length);
      const factor = Math.exp(2.2 * next() - 1.1);
      const made = meant.map((p, i) => (i === wrong ? { ...p, parts: p.parts * factor } : p));
      const colour = (parts: readonly MixturePart[]): Lab => predictColour(ofParts(parts), shelf);
      const target = colour(meant);
      const found = correctPile({ parts: made }, colour(made), target, shelf);
      if (!found.ok) throw new Error(found.fault.code);
      if (found.value.now <= 0.5) continue;
      const best = found.value.options[0]!;
      expect(deltaE00(target, colour([...made, ...best.add]))).toBeLessThan(1);
    }
  });
});
