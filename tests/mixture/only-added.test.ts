import { expect, test } from 'vitest';
import { correctPile } from '../../src/mixture/correct-pile.ts';
import { ofParts, predictColour } from '../../src/mixture/predict.ts';
import { invented } from './invented.ts';

const recipe = [
  { pigment: 'white', parts: 6 },
  { pigment: 'red', parts: 2 },
  { pigment: 'earth', parts: 1 },
];

// What is in a pile stays in it: a colour that came out too strong is mended by more of the rest.
test('a pile with a third too much red is mended by what is added to it alone', () => {
  const wanted = predictColour(ofParts(recipe), invented);
  const made = recipe.map((one) => (one.pigment === 'red' ? { ...one, parts: 2.7 } : one));
  const found = correctPile(
    { parts: made },
    predictColour(ofParts(made), invented),
    wanted,
    invented,
    {
      most: 2,
    },
  );
  if (!found.ok) throw new Error(found.fault.code);
  const { now, options } = found.value;
  expect(options.length).toBeGreaterThan(0);
  for (const { add, total, lab, deltaE00 } of options) {
    expect(add.length).toBeGreaterThan(0);
    for (const { parts } of add) expect(parts).toBeGreaterThan(0);
    expect(total).toBeGreaterThan(0);
    expect(deltaE00).toBeLessThan(now);
    // The whole pile and the additions together have the colour that is promised.
    const both = predictColour(ofParts([...made, ...add]), invented);
    for (const axis of [0, 1, 2] as const) expect(both[axis]).toBeCloseTo(lab[axis], 6);
  }
});
