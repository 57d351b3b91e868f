import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface, NO_SURFACE } from '../../src/optics/surface.ts';
import { BUILT_IN_CURVES, builtInPaintOf } from '../../src/pigment/built-in-curves.ts';
import { masstone } from '../../src/pigment/masstone.ts';
import {
  paintOfColour,
  paintOfMasstone,
  SCATTERING,
} from '../../src/pigment/paint-from-masstone.ts';
import { pigmentOf } from '../../src/pigment/pigment-facts.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';

describe('a paint from its masstone', () => {
  test.each<Lab>([
    [42, 38, 22],
    [60, -3, -24],
    [88, -4, 50],
    [50, 0, 0],
  ])('in CIELAB %d, %d, %d, looks so again, however it hides', (...lab) => {
    for (const surface of [STARTER_SURFACE, NO_SURFACE])
      for (const S of Object.values(SCATTERING)) {
        const seen = paintOfColour(lab, surface, S);
        expect(seen.exact).toBe(true);
        expect(deltaE00(masstone(seen.paint, surface), lab)).toBeLessThan(1e-6);
        expect(seen.paint.K.every((k) => k >= 0)).toBe(true);
        expect(seen.paint.S.every((s) => s === S)).toBe(true);
      }
  });

  test('keeps the S of an earlier lot, band by band', () => {
    const { S } = builtInPaintOf('red_earth')!;
    const { paint } = paintOfColour([38, 30, 22], STARTER_SURFACE, S);
    expect(paint.S).toEqual(S);
    expect(paint.S).not.toBe(S);
  });

  test('darker than the gloss of its surface, is the nearest that can be', () => {
    const { exact, lab, paint } = paintOfColour([2, 0, 0], STARTER_SURFACE, 0.1);
    expect(exact).toBe(false);
    expect(lab[0]).toBeGreaterThan(2);
    expect(deltaE00(masstone(paint, STARTER_SURFACE), lab)).toBeLessThan(0.01);
  });

  test.each(BUILT_IN_CURVES.map(({ id }) => id))(
    'from its spectrum, %s has its own K again',
    (id) => {
      const paint = builtInPaintOf(id)!;
      const R: Reflectance = addSurface(opaque([1], [paint], spectrum()), STARTER_SURFACE);
      const { paint: read } = paintOfMasstone(R, STARTER_SURFACE, paint.S);
      // Where less comes back than the inverse can tell from nothing, K is a large number either way.
      const distinct = [...read.K.keys()].filter((band) => paint.K[band]! < 100 * paint.S[band]!);
      expect(distinct.length).toBeGreaterThan(0);
      for (const band of distinct) expect(read.K[band]).toBeCloseTo(paint.K[band]!, 6);
    },
  );
});

test('scattering by how a paint hides: the medians of our own curves', () => {
  expect(Object.keys(SCATTERING)).toHaveLength(4);
  for (const [word, expected] of Object.entries(SCATTERING)) {
    const means = BUILT_IN_CURVES.filter(({ id }) => pigmentOf(id)?.opacity.word === word)
      .map(
        ({ id }) =>
          builtInPaintOf(id)!
            .S.slice(7, 28)
            .reduce((sum, s) => sum + s, 0) / 21,
      )
      .toSorted((p, q) => p - q);
    const middle = (means[(means.length - 1) >> 1]! + means[means.length >> 1]!) / 2;
    expect(Math.abs(expected / middle - 1)).toBeLessThan(0.1);
  }
});
