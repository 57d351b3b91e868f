import { expect, test } from 'vitest';
import {
  BANDS,
  bandNm,
  LAST_NM,
  type Reflectance,
  type Spectrum,
  spectrum,
} from '../../src/colour/grid.ts';
import { chroma, labOf } from '../../src/colour/lab.ts';
import { D50, D65, ILLUMINANT_A, toXYZ } from '../../src/colour/observer.ts';

test('the grid runs from 380 to 730 nm', () => {
  expect([bandNm(0), bandNm(BANDS - 1), LAST_NM]).toEqual([380, 730, 730]);
});

test('a spectrum has one finite number a band', () => {
  expect(() => spectrum([1, 2, 3])).toThrow(RangeError);
  expect(() => spectrum(new Array(BANDS).fill(Number.NaN))).toThrow(RangeError);
  expect(spectrum()).toHaveLength(BANDS);
});

test('a flat reflectance is neutral under every light', () => {
  const grey = spectrum<'R'>(new Array(BANDS).fill(0.184475));
  for (const light of [D65, D50, ILLUMINANT_A]) {
    const lab = labOf(grey, light);
    // #777777 of sRGB has this Y: L* 50.034.
    expect(lab[0]).toBeCloseTo(50.034439, 4);
    expect(chroma(lab)).toBeLessThan(1e-10);
  }
});

test('XYZ fills the array that it is given', () => {
  const out = new Float64Array(3);
  expect(toXYZ(spectrum<'R'>(new Array(BANDS).fill(1)), D65, out)).toBe(out);
  expect([...out]).toEqual(D65.white.map((v) => expect.closeTo(v, 10)));
});

test('kinds of spectra do not mix', () => {
  const K: Spectrum<'K'> = spectrum<'K'>();
  // @ts-expect-error absorption is no reflectance
  const R: Reflectance = K;
  expect(R).toBe(K);
});
