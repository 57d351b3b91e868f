import { expect, test } from 'vitest';
import { mixingOrder, pileMeasures } from '../../src/mixture/pile-measures.ts';
import { invented } from './invented.ts';

const parts = [
  { pigment: 'white', parts: 6 },
  { pigment: 'blue', parts: 3 },
  { pigment: 'black', parts: 1 },
];
const densities: Record<string, number> = { white: 4, blue: 1.5, black: 1.2 };
const densityOf = (pigment: string) => densities[pigment] ?? null;

test('by volume and by weight', () => {
  const found = pileMeasures(parts, invented, 50, densityOf);
  expect(found.map((m) => m.cm3)).toEqual([30, 15, 5]);
  // 30 cm3 of 4, 15 of 1.5, 5 of 1.2 g/cm3: 120, 22.5 and 6 g of 148.5.
  expect(found.map((m) => m.grams)).toEqual([120, 22.5, 6]);
  expect(found[1]!.weight).toBeCloseTo(22.5 / 148.5, 12);
  expect(found[1]!.volume).toBeCloseTo(0.3, 12);
});

test('no grams where a density is unknown or the shelf’s parts are no volumes', () => {
  const unknown = pileMeasures([...parts, { pigment: 'red', parts: 1 }], invented, 50, densityOf);
  const none = [null, null];
  expect(unknown.map((m) => [m.grams, m.weight])).toEqual([none, none, none, none]);
  const byMass = pileMeasures(parts, { basis: 'mass' }, 50, densityOf);
  expect(byMass.map((m) => m.grams)).toEqual([null, null, null]);
});

test('weak and light first, the strong colour last', () => {
  const order = mixingOrder([...parts].reverse(), invented).map((p) => p.pigment);
  expect(order[0]).toBe('white');
  expect(order.at(-1)).toBe('black');
});
