import { expect, test } from 'vitest';
import { fitCorrection } from '../../src/calibration/colour-correction.ts';
import type { Rgb } from '../../src/calibration/robust-mean.ts';
import type { Lab } from '../../src/colour/lab.ts';

// Invented patches: six hues and a row of greys, as a camera with a green cast might see them.
const LABS: Lab[] = [
  ...Array.from({ length: 18 }, (_, i): Lab => {
    const [L, C, h] = [35 + 15 * (i % 3), 20 + 12 * (i % 4), (i * Math.PI) / 9];
    return [L, C * Math.cos(h), C * Math.sin(h)];
  }),
  ...[95, 80, 65, 50, 35, 20].map((L): Lab => [L, 0, 0]),
];
const rgbs: Rgb[] = LABS.map(([L, a, b]) => {
  const light = ((L + 16) / 116) ** 3;
  return [
    light * Math.exp(0.008 * a),
    light * Math.exp(-0.006 * a + 0.02),
    light * Math.exp(-0.011 * b),
  ];
});

test.each(['linear', 'root-polynomial'] as const)(
  '%s: at half the exposure the corrected colours have half the light',
  (kind) => {
    const { labOf: corrected } = fitCorrection(rgbs, LABS, kind);
    const pairs = rgbs.map((rgb) => ({
      whole: corrected(rgb),
      half: corrected(rgb.map((v) => v / 2) as unknown as Rgb),
    }));
    // Where CIELAB is a cube root, half the light is L* + 16 by 2^(1/3) less.
    const bright = pairs.filter(({ half }) => half[0] > 20);
    expect(bright.length).toBeGreaterThanOrEqual(20);
    for (const { whole, half } of bright)
      expect((half[0] + 16) * Math.cbrt(2)).toBeCloseTo(whole[0] + 16, 6);
  },
);

test('too few patches are a mistake of the caller', () => {
  expect(() => fitCorrection(rgbs.slice(0, 5), LABS.slice(0, 5), 'root-polynomial')).toThrow(
    RangeError,
  );
  expect(() => fitCorrection(rgbs, LABS.slice(1), 'linear')).toThrow(RangeError);
});
