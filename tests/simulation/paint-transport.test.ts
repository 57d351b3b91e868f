import { expect, test } from 'vitest';
import { median } from '../../src/calibration/robust-mean.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { labOf } from '../../src/colour/lab.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import { random } from '../optics/random.ts';
import { describeShared } from '../shared.ts';
import {
  measuredPaints,
  randomPile,
  MEASURED_SURFACE as surface,
} from '../tools/measured-paints.ts';
import { halfSpace, studioPaints, THROWN_BACK } from '../tools/paint-transport.ts';

// D. B. Judd, J. Res. NBS 29 (1942) 329: 0.596 of diffuse light at an index of 1.5 (from memory).
test('a face of index 1.5 throws back 0.596 of scattered light', () => {
  expect(THROWN_BACK).toBeCloseTo(0.596, 3);
});

// S. Chandrasekhar, Radiative Transfer, 1950: of light scattered evenly in all directions a half-space sends
// back 1 − 2 √(1 − ω) ∫ μ H(μ) dμ, with 1 ÷ H(μ) = √(1 − ω) + ω ÷ 2 ∫ μ′ H(μ′) ÷ (μ + μ′) dμ′ (from memory).
test.each([0.2, 0.5, 0.8, 0.9, 0.99, 0.999])(
  'a half-space of albedo %d reflects as the exact theory has it, within 0.004',
  (albedo) => {
    const steps = 400;
    const mus = Array.from({ length: steps }, (_, i) => (i + 0.5) / steps);
    const rest = Math.sqrt(1 - albedo);
    let H = mus.map(() => 1);
    for (let round = 0; round < 60; round++)
      H = mus.map(
        (mu) =>
          1 /
          (rest +
            (albedo / 2 / steps) *
              mus.reduce((sum, other, i) => sum + (other * H[i]!) / (mu + other), 0)),
      );
    const exact = 1 - (2 * rest * mus.reduce((sum, mu, i) => sum + mu * H[i]!, 0)) / steps;
    expect(Math.abs(halfSpace(1 - albedo, albedo) - exact)).toBeLessThan(0.004);
  },
);

test('a half-space without absorption is white, without scattering black', () => {
  expect(halfSpace(0, 1)).toBe(1);
  expect(halfSpace(1, 0)).toBeCloseTo(0, 12);
  expect(halfSpace(0.5, 1)).toBeGreaterThan(halfSpace(1, 1));
});

describeShared('paints of the simulations', () => {
  const measured = measuredPaints();
  const paints = studioPaints(measured, surface);
  const off = (parts: number[]) =>
    deltaE00(labOf(paints.lookOf(parts)), labOf(predictReflectance({ parts }, measured, surface)));

  test('masstones look as they were measured', () => {
    expect(measured).toHaveLength(27);
    for (const i of measured.keys())
      expect(off(measured.map((_, at) => Number(at === i)))).toBeLessThan(0.5);
  });

  // Otherwise a simulation with them would say no more than one with our own optics.
  test('mixtures are others than our own optics foresee from their K and S', () => {
    const { uniform } = random(77);
    const all = Array.from({ length: 300 }, () => off(randomPile(measured.length, uniform)));
    const sorted = all.toSorted((a, b) => a - b);
    console.log(`apart: median ${median(sorted).toFixed(2)}, tenth ${sorted[270]!.toFixed(2)}`);
    const tints = measured
      .slice(1)
      .map((_, i) => off(measured.map((_, at) => (at === 0 ? 4 : Number(at === i + 1)))));
    console.log(
      `tints of 1 to 4 apart: median ${median(tints.toSorted((a, b) => a - b)).toFixed(2)}`,
    );
    expect(median(sorted)).toBeGreaterThan(1);
  });
});
