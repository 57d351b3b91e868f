import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chroma, type Lab } from '../../src/colour/lab.ts';
import { rangeMapping, shelfLightness } from '../../src/harmony/shelf-range.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { evenly } from '../evenly.ts';

const shelf = starterShelf();
const { darkest, lightest } = shelfLightness(shelf);
const lab = fc.tuple(evenly(0, 100), evenly(-80, 80), evenly(-80, 80)) as fc.Arbitrary<Lab>;

test('lightness is mapped linearly into the range of the shelf, chroma by the same factor', () => {
  const labs: Lab[] = [
    [2, 4, -6],
    [51, 40, 30],
    [100, 0, 3],
  ];
  const keyed = labs.map(rangeMapping(labs, shelf));
  const factor = (lightest - darkest) / 98;
  expect(keyed[0]![0]).toBeCloseTo(darkest, 9);
  expect(keyed[1]![0]).toBeCloseTo(darkest + 49 * factor, 9);
  expect(keyed[2]![0]).toBeCloseTo(lightest, 9);
  expect(chroma(keyed[1]!)).toBeCloseTo(50 * factor, 9);
});

test('what lies inside the range stays as it is', () => {
  const misty: Lab[] = [
    [60, 2, -4],
    [70, -3, 5],
  ];
  expect(misty.map(rangeMapping(misty, shelf))).toEqual(misty);
});

test('order of lightness and hue angles are kept, and nothing leaves the range', () => {
  fc.assert(
    fc.property(fc.array(lab, { minLength: 1, maxLength: 7 }), (labs) => {
      const keyed = labs.map(rangeMapping(labs, shelf));
      for (const [i, [L, a, b]] of keyed.entries()) {
        expect(L).toBeGreaterThanOrEqual(darkest - 1e-9);
        expect(L).toBeLessThanOrEqual(lightest + 1e-9);
        expect(a * labs[i]![2]).toBeCloseTo(b * labs[i]![1], 6);
        // The same angle, not the opposite one, and never grey.
        if (chroma(labs[i]!) > 1) expect(a * labs[i]![1] + b * labs[i]![2]).toBeGreaterThan(0);
        for (const [j, other] of keyed.entries())
          if (labs[i]![0] > labs[j]![0]) expect(L).toBeGreaterThanOrEqual(other[0]);
      }
    }),
    { seed: 3 },
  );
});
