import fc from 'fast-check';
import { expect, test } from 'vitest';
import { overGround } from '../../src/optics/film.ts';
import { infiniteReflectance } from '../../src/optics/opaque.ts';
import { filmSlopes, opaqueSlopes } from '../../src/optics/reflectance-derivatives.ts';
import { evenly } from '../evenly.ts';

const logarithm = evenly(-9, 5);
const h = 1e-4;
const blank = () => ({ R: 0, dlnK: 0, dlnS: 0 });

test('the slopes of an opaque film are those of its reflectance', () => {
  fc.assert(
    fc.property(logarithm, logarithm, (k, s) => {
      const found = opaqueSlopes(Math.exp(k), Math.exp(s), blank());
      const R = (k: number, s: number) => infiniteReflectance(Math.exp(k), Math.exp(s));
      expect(found.R).toBeCloseTo(R(k, s), 14);
      expect(found.dlnK).toBeCloseTo((R(k + h, s) - R(k - h, s)) / (2 * h), 7);
      expect(found.dlnS).toBeCloseTo((R(k, s + h) - R(k, s - h)) / (2 * h), 7);
    }),
    { seed: 1 },
  );
});

test('the slopes of a film are those of its reflectance, from a breath to a wall', () => {
  fc.assert(
    fc.property(logarithm, logarithm, evenly(0, 1), (k, s, Rg) => {
      const found = filmSlopes(Math.exp(k), Math.exp(s), Rg, blank());
      const R = (k: number, s: number) => overGround(Math.exp(k), Math.exp(s), 1, Rg);
      expect(found.R).toBeCloseTo(R(k, s), 12);
      expect(found.dlnK).toBeCloseTo((R(k + h, s) - R(k - h, s)) / (2 * h), 7);
      expect(found.dlnS).toBeCloseTo((R(k, s + h) - R(k, s - h)) / (2 * h), 7);
    }),
    { numRuns: 1000, seed: 2 },
  );
});

test('a film that does not absorb, or does not scatter, has slopes too', () => {
  const white = filmSlopes(0, 2, 0.3, blank());
  expect(white.R).toBeCloseTo(overGround(0, 2, 1, 0.3), 13);
  expect(white.dlnK).toBeCloseTo(0, 15);
  const dye = filmSlopes(0.7, 0, 0.6, blank());
  expect(dye.R).toBeCloseTo(0.6 * Math.exp(-1.4), 13);
  expect(dye.dlnK).toBeCloseTo(-1.4 * 0.6 * Math.exp(-1.4), 13);
  expect(dye.dlnS).toBeCloseTo(0, 15);
});
