import { expect, test } from 'vitest';
import { BANDS, bandNm } from '../../src/colour/grid.ts';
import { paintOf } from '../../src/pigment/curve-model.ts';

test('a level alone is the same K in every band', () => {
  const { K, S } = paintOf({
    lnK: { level: Math.log(2), slope: 0, features: [] },
    lnS: { level: Math.log(0.3), slope: 0 },
  });
  expect([...K]).toEqual(Array.from({ length: BANDS }, () => expect.closeTo(2, 12)));
  expect([...S]).toEqual(Array.from({ length: BANDS }, () => expect.closeTo(0.3, 12)));
});

test('an edge stands on its short-wave side and is half way in ln K at its wavelength', () => {
  const { K } = paintOf({
    lnK: { level: 0, slope: 0, features: [{ kind: 'edge', height: 4, nm: 550, width: 5 }] },
    lnS: { level: 0, slope: 0 },
  });
  expect(Math.log(K[0]!)).toBeCloseTo(4, 6);
  expect(Math.log(K[17]!)).toBeCloseTo(2, 12);
  expect(bandNm(17)).toBe(550);
  expect(Math.log(K[35]!)).toBeCloseTo(0, 6);
});

test('a band is highest at its wavelength and e^-1/2 of its height one width away', () => {
  const { K } = paintOf({
    lnK: { level: 0, slope: 0, features: [{ kind: 'band', height: 3, nm: 600, width: 20 }] },
    lnS: { level: 0, slope: 0 },
  });
  expect(Math.log(K[22]!)).toBeCloseTo(3, 12);
  expect(Math.log(K[24]!)).toBeCloseTo(3 * Math.exp(-0.5), 12);
});

test('slopes count per 100 nm from 550', () => {
  const { K, S } = paintOf({
    lnK: { level: 1, slope: 0.5, features: [] },
    lnS: { level: -1, slope: -0.2 },
  });
  expect(Math.log(K[27]!)).toBeCloseTo(1.5, 12);
  expect(Math.log(S[7]!)).toBeCloseTo(-0.8, 12);
});
