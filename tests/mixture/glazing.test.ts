import { expect, test } from 'vitest';
import { BANDS, spectrum } from '../../src/colour/grid.ts';
import { glazingPigmentOf, isGlazePaint } from '../../src/mixture/glazing.ts';
import { invented } from './invented.ts';

const clear = spectrum<'S'>(new Array<number>(BANDS).fill(1e-4));
const red = invented.paints.find(({ pigment }) => pigment === 'red')!.paint;
const lake = { pigment: 'lake', label: 'Lake', paint: { K: red.K, S: clear } };
const shelf = { ...invented, paints: [...invented.paints, lake] };

test('a lake alone is a film; with white in it the pile covers', () => {
  expect([isGlazePaint('lake', shelf), isGlazePaint('white', shelf)]).toEqual([true, false]);
  expect(glazingPigmentOf([{ pigment: 'lake', amount: 1 }], shelf)).toBe('lake');
  const withBlue = [
    { pigment: 'lake', amount: 9 },
    { pigment: 'blue', amount: 1 },
  ];
  expect(glazingPigmentOf(withBlue, shelf)).toBe('lake');
  expect(glazingPigmentOf([...withBlue, { pigment: 'white', amount: 1 }], shelf)).toBeNull();
});
