import fc from 'fast-check';
import { expect, test } from 'vitest';
import { labOfHex } from '../../src/colour/gamut-mapping.ts';
import { BANDS, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { ILLUMINANT_A } from '../../src/colour/observer.ts';
import { recoverReflectance } from '../../src/optics/reflectance-recovery.ts';
import { addSurface, NO_SURFACE, type Surface, throughSurface } from '../../src/optics/surface.ts';
import { evenly } from '../evenly.ts';
import { flat } from './flat.ts';

const glossy: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };
const glareless: Surface = { ...glossy, specular: 'excluded' };
const apart = (x: Lab, y: Lab) => Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);
const bounded = (R: Float64Array) => R.length === BANDS && R.every((r) => r > 0 && r < 1);

test('a smooth paint: its colour comes back exactly, through any surface', () => {
  const edge = fc.record({
    low: evenly(0.01, 0.2),
    high: evenly(0.3, 0.95),
    at: evenly(420, 680),
    rising: fc.boolean(),
    surface: fc.constantFrom(NO_SURFACE, glossy, glareless),
  });
  fc.assert(
    fc.property(edge, ({ low, high, at, rising, surface }) => {
      const R = spectrum<'R'>(
        Float64Array.from({ length: BANDS }, (_, band) => {
          const up = 1 / (1 + Math.exp(-(380 + 10 * band - at) / 15));
          return low + (high - low) * (rising ? up : 1 - up);
        }),
      );
      const lab = labOf(addSurface(R, surface));
      const found = recoverReflectance(lab, surface);
      expect(found.exact).toBe(true);
      expect(apart(found.lab, lab)).toBeLessThan(1e-7);
      expect(bounded(found.R)).toBe(true);
    }),
    { numRuns: 60, seed: 7 },
  );
});

test('a neutral is flat under its surface, in daylight and by lamp-light', () => {
  for (const surface of [NO_SURFACE, glossy]) {
    const grey = labOf(addSurface(flat(0.3), surface));
    const { R, exact } = recoverReflectance([grey[0], 0, 0], surface);
    expect(exact).toBe(true);
    const wanted = Array.from(flat(0.3), (r) => expect.closeTo(r, 8));
    expect([...R]).toEqual(wanted);
    expect([...recoverReflectance([grey[0], 0, 0], surface, ILLUMINANT_A).R]).toEqual(wanted);
  }
});

test('darker than the surface, lighter than white, or too vivid: the nearest, and said so', () => {
  const dark = recoverReflectance([5, 0, 0], glossy);
  expect(dark.exact).toBe(false);
  expect(dark.lab[0]).toBeCloseTo(labOf(flat(throughSurface(1e-4, glossy)))[0], 6);
  const light = recoverReflectance([110, 0, 0], NO_SURFACE);
  expect(light.exact).toBe(false);
  expect(light.lab[0]).toBeGreaterThan(99.9);
  expect(light.lab[0]).toBeLessThanOrEqual(100);
  const vivid: Lab = [40, 120, 90];
  const found = recoverReflectance(vivid, glossy);
  expect(found.exact).toBe(false);
  expect(bounded(found.R)).toBe(true);
  expect(found.lab[0]).toBeCloseTo(40, 6);
  expect(found.lab[1] / found.lab[2]).toBeCloseTo(120 / 90, 6);
  expect(found.lab[1]).toBeGreaterThan(40);
  expect(found.lab[1]).toBeLessThan(120);
});

// Regression: which of the 27 a surface lets through follows from our own curves.
test.each([
  ['no surface', NO_SURFACE, 25],
  ['a glossy surface', glossy, 18],
  ['gloss left out', glareless, 21],
])('every corner of the sRGB cube gives a bounded curve, through %s', (_, surface, exactly) => {
  let exact = 0;
  for (const r of ['00', '66', 'ff'])
    for (const g of ['00', '66', 'ff'])
      for (const b of ['00', '66', 'ff']) {
        const lab = labOfHex(`#${r}${g}${b}`);
        const found = recoverReflectance(lab, surface);
        expect(bounded(found.R)).toBe(true);
        expect(apart(found.lab, lab) < 1e-6).toBe(found.exact);
        exact += Number(found.exact);
      }
  expect(exact).toBe(exactly);
});

test('a colour that is no number is refused', () => {
  expect(() => recoverReflectance([50, Number.NaN, 0], glossy)).toThrow(RangeError);
  expect(() => recoverReflectance([50, 0, 0], { ...glossy, k2: 1 })).toThrow(RangeError);
});
