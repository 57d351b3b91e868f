import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  addSurface,
  DARKEST,
  removeSurface,
  type Surface,
  surfaceSlope,
  throughSurface,
  underSurface,
} from '../../src/optics/surface.ts';
import { evenly } from '../evenly.ts';
import { flat } from './flat.ts';

const surfaces = fc.record({
  k1: evenly(0, 0.2),
  k2: evenly(0, 0.9),
  specular: fc.constantFrom('included' as const, 'excluded' as const),
});
const reflectance = evenly(0, 1);

test('through a surface and back', () => {
  fc.assert(
    fc.property(reflectance, surfaces, (R, surface) => {
      expect(underSurface(throughSurface(R, surface), surface)).toBeCloseTo(R, 12);
    }),
    { seed: 1 },
  );
});

test('the slope is that of the formula', () => {
  fc.assert(
    fc.property(evenly(0.01, 0.99), surfaces, (R, surface) => {
      const h = 1e-6;
      const slope = (throughSurface(R + h, surface) - throughSurface(R - h, surface)) / (2 * h);
      expect(surfaceSlope(R, surface) / slope).toBeCloseTo(1, 5);
    }),
    { seed: 2 },
  );
});

test('a band darker than the surface alone is set to almost nothing and counted', () => {
  const surface: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };
  const measured = addSurface(flat(0.5), surface);
  expect(removeSurface(measured, surface)).toEqual({
    R: flat(underSurface(measured[0]!, surface)),
    clamped: 0,
  });
  measured[3] = 0.02;
  measured[4] = 1.1;
  const { R, clamped } = removeSurface(measured, surface);
  expect([R[3], R[4], clamped]).toEqual([DARKEST, 1, 2]);
});

test('a surface that is none, and a number that is none, are refused', () => {
  const sound: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };
  for (const k of [-0.1, 1, Number.NaN]) {
    expect(() => addSurface(flat(0.5), { ...sound, k1: k })).toThrow(RangeError);
    expect(() => removeSurface(flat(0.5), { ...sound, k2: k })).toThrow(RangeError);
  }
  const bad = flat(0.5);
  bad[7] = Number.NaN;
  expect(() => addSurface(bad, sound)).toThrow('band 7');
  expect(() => removeSurface(bad, sound)).toThrow('band 7');
});
