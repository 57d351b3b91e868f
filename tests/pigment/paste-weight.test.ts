import { expect, test } from 'vitest';
import { filmCm3, pasteOf, weightsOf } from '../../src/pigment/paste.ts';

// Volumes add: 100 g of lead white at 6.7 g/cm3 are 14.93 cm3, 10 g of linseed oil at 0.93 are 10.75.
test('a paste is its pigment and its oil, by volume', () => {
  const grind = { density: 6.7, oil: 10 };
  expect(pasteOf(grind).density).toBeCloseTo(110 / (100 / 6.7 + 10 / 0.93), 12);
  expect(pasteOf(grind).density).toBeCloseTo(4.284, 3);
  expect(pasteOf(grind).pigmentShare).toBeCloseTo(0.5812, 4);
});

test('what 10 cm3 of it weigh is pigment and oil in the proportion of the grind', () => {
  const { paint, pigment, oil } = weightsOf(10, { density: 6.7, oil: 10 });
  expect(paint).toBeCloseTo(42.84, 2);
  expect(pigment + oil).toBeCloseTo(paint, 12);
  expect(pigment / oil).toBeCloseTo(10, 12);
});

// 1 cm2 by 1 micrometre is a ten-thousandth of a cubic centimetre.
test('a square metre, 40 micrometres thick, is 40 cm3', () => {
  expect(filmCm3(10_000, 40)).toBeCloseTo(40, 12);
});
