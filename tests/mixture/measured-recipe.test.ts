import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import { measuredRecipeOf } from '../../src/mixture/measured-recipe.ts';
import { ofParts, predictColour } from '../../src/mixture/predict.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';

const shelf = starterShelf();
const [pale] = (() => {
  const found = findMixtures([[75.7, -3.1, -11.6]], shelf);
  if (!found.ok) throw new Error(found.fault.code);
  return found.value.map((answer) => answer.simplest);
})();

test('the piles of a mixture with let-downs, and its pigments, both make the colour that is printed', () => {
  const bench = measuredRecipeOf(pale!, shelf);
  expect(bench.letDowns.length).toBeGreaterThan(0);
  for (const { name, whiteParts } of bench.letDowns) {
    expect(bench.parts.map((part) => part.pigment)).toContain(name);
    expect([3, 5, 10, 20]).toContain(whiteParts);
  }
  const asPiles = predictColour(ofParts(bench.parts), bench.shelf);
  const asPigments = predictColour(ofParts(bench.pigments), shelf);
  expect(deltaE00(asPiles, bench.lab)).toBeLessThan(1e-6);
  expect(deltaE00(asPigments, bench.lab)).toBeLessThan(1e-6);
  const total = (parts: readonly { parts: number }[]) => parts.reduce((sum, p) => sum + p.parts, 0);
  expect(total(bench.pigments)).toBeCloseTo(total(bench.parts), 9);
});

test('without let-downs the bench is the parts themselves', () => {
  const { letDown: _, ...plain } = pale!;
  const bench = measuredRecipeOf(plain, shelf);
  expect(bench.parts).toBe(plain.parts);
  expect(bench.pigments).toBe(plain.parts);
  expect(bench.shelf).toBe(shelf);
});
