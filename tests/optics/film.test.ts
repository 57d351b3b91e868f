import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spectrum } from '../../src/colour/grid.ts';
import {
  filmLayer,
  filmOverGround,
  overBlack,
  overGround,
  transmittance,
} from '../../src/optics/film.ts';
import { combineLayers, filmStackReflectance } from '../../src/optics/film-stack.ts';
import { infiniteReflectance } from '../../src/optics/opaque.ts';
import { NO_SURFACE, throughSurface } from '../../src/optics/surface.ts';
import { evenly } from '../evenly.ts';
import { flat, flatPaint } from './flat.ts';

const amount = evenly(0, 50);
const reflectance = evenly(0, 1);

test('nothing over a ground shows the ground, any K and S', () => {
  fc.assert(
    fc.property(amount, amount, reflectance, (K, S, Rg) => {
      expect(overGround(K, S, 0, Rg)).toBeCloseTo(Rg, 14);
      expect(transmittance(K, S, 0)).toBe(1);
    }),
    { seed: 1 },
  );
});

test('a thick film shows R-infinity, whatever lies under it', () => {
  fc.assert(
    fc.property(evenly(0.01, 50), amount, reflectance, (K, S, Rg) => {
      const opaque = infiniteReflectance(K, S);
      expect(overGround(K, S, 1e5, Rg)).toBeCloseTo(opaque, 12);
      expect(overGround(K, S, Number.POSITIVE_INFINITY, Rg)).toBe(opaque);
      expect(transmittance(K, S, Number.POSITIVE_INFINITY)).toBe(0);
    }),
    { seed: 2 },
  );
});

test('a film is bounded, and lighter over a lighter ground', () => {
  fc.assert(
    fc.property(amount, amount, amount, reflectance, (K, S, X, Rg) => {
      const R = overGround(K, S, X, Rg);
      expect(R).toBeGreaterThanOrEqual(0);
      expect(R).toBeLessThanOrEqual(1);
      expect(overGround(K, S, X, 1)).toBeGreaterThanOrEqual(R - 1e-15);
      expect(overBlack(K, S, X) + transmittance(K, S, X)).toBeLessThanOrEqual(1 + 1e-14);
    }),
    { seed: 3 },
  );
});

test('where nothing absorbs, what is not reflected passes', () => {
  expect(overBlack(0, 1e3, 1) + transmittance(0, 1e3, 1)).toBeCloseTo(1, 14);
  // A perfect white under any film that does not absorb stays perfect, even at absurd thickness.
  for (const X of [1, 1e8, 1e300]) expect(overGround(0, 1, X, 1)).toBeCloseTo(1, 12);
});

test('small K joins K = 0, small S joins S = 0, without a step', () => {
  expect(overGround(1e-14, 1, 2, 0.3)).toBeCloseTo(overGround(0, 1, 2, 0.3), 12);
  expect(overGround(1, 1e-14, 2, 0.3)).toBeCloseTo(overGround(1, 0, 2, 0.3), 12);
});

test('a black so deep that nothing returns is 0, not a rounding error below it', () => {
  const R = overGround(500, 1e-9, 1, 1);
  expect(R).toBeGreaterThan(0);
  expect(R).toBeCloseTo(infiniteReflectance(500, 1e-9), 14);
});

test('laid in two coats or in one, a film is the same', () => {
  fc.assert(
    fc.property(amount, amount, amount, reflectance, (K, S, X, Rg) => {
      const once = overGround(K, S, X, Rg);
      const twice = overGround(K, S, 0.3 * X, overGround(K, S, 0.7 * X, Rg));
      expect(twice).toBeCloseTo(once, 12);
    }),
    { seed: 4 },
  );
});

test('parts are proportions, the thickness is the amount', () => {
  const paints = [flatPaint(0.1, 0.5), flatPaint(0.02, 0.9)];
  const a = filmOverGround({ parts: [1, 3], paints, filmMm: 0.05 }, flat(0.7), spectrum<'R'>());
  const b = filmOverGround({ parts: [5, 15], paints, filmMm: 0.05 }, flat(0.7), spectrum<'R'>());
  expect(b).toEqual(a);
  // K = 300 (0.25 × 0.1 + 0.75 × 0.02), S = 300 (0.25 × 0.5 + 0.75 × 0.9) per millimetre.
  expect(a[7]).toBeCloseTo(overGround(12, 240, 0.05, 0.7), 14);
});

test('a stack is its films from the ground up, and has one surface', () => {
  const blue = { parts: [1], paints: [flatPaint(0.4, 0.05)], filmMm: 0.02 };
  const white = { parts: [1], paints: [flatPaint(0.001, 0.8)], filmMm: 0.1 };
  const ground = flat(0.3);
  const surface = { k1: 0.04, k2: 0.6, specular: 'included' } as const;
  const R = filmStackReflectance([white, blue], ground, surface, spectrum<'R'>());
  const under = overGround(0.3, 240, 0.1, 0.3);
  expect(R[0]).toBeCloseTo(throughSurface(overGround(120, 15, 0.02, under), surface), 14);
  expect(filmStackReflectance([blue, white], ground, surface, spectrum<'R'>())[0]).toBeGreaterThan(
    R[0]!,
  );
  expect(filmStackReflectance([], ground, NO_SURFACE, spectrum<'R'>())).toEqual(ground);
  expect(ground).toEqual(flat(0.3));

  // The same two as one layer over the ground.
  const pair = combineLayers(filmLayer(blue), filmLayer(white));
  const R0 = pair.R0[0]!;
  const T = pair.T[0]!;
  expect(R0).toBeCloseTo(overGround(120, 15, 0.02, overGround(0.3, 240, 0.1, 0)), 14);
  // Kubelka, J. Opt. Soc. Am. 44 (1954) 330: T = T1 T2 / (1 - R1 R2), for layers alike on both sides.
  const [upper, lower] = [filmLayer(blue), filmLayer(white)].map((one) => ({
    R: one.R0[0]!,
    T: one.T[0]!,
  }));
  expect(T).toBeCloseTo((upper!.T * lower!.T) / (1 - upper!.R * lower!.R), 14);
});

test('a number that is none is refused', () => {
  const paints = [flatPaint(0.1, 0.5)];
  const out = spectrum<'R'>();
  const bad = flatPaint(0.1, 0.5);
  (bad.S as Float64Array)[3] = Number.NaN;
  expect(() => filmOverGround({ parts: [1], paints, filmMm: -1 }, flat(0.5), out)).toThrow(
    RangeError,
  );
  expect(() => filmOverGround({ parts: [1], paints, filmMm: Number.NaN }, flat(0.5), out)).toThrow(
    RangeError,
  );
  expect(() => filmOverGround({ parts: [0], paints, filmMm: 1 }, flat(0.5), out)).toThrow(
    RangeError,
  );
  expect(() => filmOverGround({ parts: [1], paints, filmMm: 1 }, flat(1.5), out)).toThrow(
    RangeError,
  );
  expect(() => filmOverGround({ parts: [1], paints: [bad], filmMm: 1 }, flat(0.5), out)).toThrow(
    'band 3',
  );
  expect(() => filmLayer({ parts: [1], paints: [bad], filmMm: 1 })).toThrow('band 3');
});
