import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cubeRoot } from '../../src/photo/cube-root.ts';

test('agrees with the cube root of the language', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-12, max: 1e6, noNaN: true }), (x) => {
      expect(Math.abs(cubeRoot(x) / Math.cbrt(x) - 1)).toBeLessThan(3e-7);
      expect(cubeRoot(-x)).toBe(-cubeRoot(x));
    }),
    { seed: 1 },
  );
  expect(cubeRoot(0)).toBe(0);
});
