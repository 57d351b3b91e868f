import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spectrum } from '../../src/colour/grid.ts';
import { infiniteReflectance, opaque, ratioOf } from '../../src/optics/opaque.ts';
import { evenly } from '../evenly.ts';
import { flatPaint } from './flat.ts';

test('R-infinity and K/S undo each other, close to black and close to white', () => {
  const near = [1e-12, 1e-6, 0.02, 0.5, 0.98, 1 - 1e-6];
  for (const R of near) expect(infiniteReflectance(ratioOf(R), 1) / R).toBeCloseTo(1, 9);
  expect(infiniteReflectance(0, 1)).toBe(1);
  expect(infiniteReflectance(1, 0)).toBe(0);
  expect(infiniteReflectance(1e300, 1e-300)).toBe(0);
  expect(infiniteReflectance(0, 0)).toBeNaN();
});

test('only proportions count, and a paint in no amount changes nothing', () => {
  const [white, blue] = [flatPaint(0.002, 1), flatPaint(0.9, 0.1)];
  const part = evenly(0.01, 50);
  fc.assert(
    fc.property(part, part, (a, b) => {
      const R = opaque([a, b], [white, blue], spectrum<'R'>())[5]!;
      expect(opaque([3 * a, 3 * b], [white, blue], spectrum<'R'>())[5]).toBeCloseTo(R, 13);
      expect(opaque([a, b, 0], [white, blue, flatPaint(9, 9)], spectrum<'R'>())[5]).toBe(R);
    }),
    { seed: 1 },
  );
});

test('what has no reflectance is refused, by its band', () => {
  const out = spectrum<'R'>();
  const bad = flatPaint(0.1, 0.5);
  (bad.K as Float64Array)[30] = Number.NaN;
  expect(() => opaque([1], [bad], out)).toThrow('band 30');
  (bad.K as Float64Array)[30] = -0.1;
  expect(() => opaque([1], [bad], out)).toThrow('band 30');
  expect(() => opaque([1], [flatPaint(0, 0)], out)).toThrow('band 0');
  expect(() => opaque([1], [], out)).toThrow('1 parts for 0 paints');
  expect(() => opaque([Number.NaN], [bad], out)).toThrow('part 0');
  expect(() => opaque([Number.POSITIVE_INFINITY], [bad], out)).toThrow('part 0');
  expect(() => opaque([0], [bad], out)).toThrow('no part');
  // Nothing scatters: as black as black can be.
  expect(opaque([1], [flatPaint(0.5, 0)], out)[0]).toBe(0);
});
