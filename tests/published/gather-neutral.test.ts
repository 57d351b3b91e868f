import { expect, test } from 'vitest';
import { adaptationMatrix } from '../../src/colour/adaptation.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { multiplyColumn } from '../../src/colour/matrix.ts';
import { ILLUMINANT_A, toXYZ, type XYZ } from '../../src/colour/observer.ts';
import { DECODE_8BIT, FROM_XYZ, inSrgb, labOfLinear } from '../../src/colour/rgb.ts';
import { daylightWhite, whiteBalanceAt } from '../../src/photo/white-balance.ts';
import { picture } from '../photo/paint.ts';
import { describeShared, readSharedJson } from '../shared.ts';
import { encode } from '../tools/encode.ts';

// CIE 015:2018, table 6: components of daylight, 380-730 nm in 10 nm steps (values from memory;
// the check below rebuilds the table of D65 from them).
const S0 = [
  63.4, 65.8, 94.8, 104.8, 105.9, 96.8, 113.9, 125.6, 125.5, 121.3, 121.3, 113.5, 113.1, 110.8,
  106.5, 108.8, 105.3, 104.4, 100, 96, 95.1, 89.1, 90.5, 90.3, 88.4, 84, 85.1, 81.9, 82.6, 84.9,
  81.3, 71.9, 74.3, 76.4, 63.3, 71.7,
];
const S1 = [
  38.5, 35, 43.4, 46.3, 43.9, 37.1, 36.7, 35.9, 32.6, 27.9, 24.3, 20.1, 16.2, 13.2, 8.6, 6.1, 4.2,
  1.9, 0, -1.6, -3.5, -3.5, -5.8, -7.2, -8.6, -9.5, -10.9, -10.7, -12, -14, -13.6, -12, -13.3,
  -12.9, -10.6, -11.6,
];
const S2 = [
  3, 1.2, -1.1, -0.5, -0.7, -1.2, -2.6, -2.9, -2.8, -2.6, -2.6, -1.8, -1.5, -1.3, -1.2, -1, -0.5,
  -0.3, 0, 0.2, 0.5, 2.1, 3.2, 4.1, 4.7, 5.1, 6.7, 7.3, 8.6, 9.8, 10.2, 8.3, 9.6, 8.5, 7, 7.6,
];

function daylight(kelvin: number): number[] {
  const [X, Y, Z] = daylightWhite(kelvin);
  const [x, y] = [X / (X + Y + Z), Y / (X + Y + Z)];
  const m = 0.0241 + 0.2562 * x - 0.7341 * y;
  const m1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / m;
  const m2 = (0.03 - 31.4424 * x + 30.0717 * y) / m;
  return S0.map((s, i) => s + m1 * S1[i]! + m2 * S2[i]!);
}

describeShared('a neutral spot brings the chart back', () => {
  const checks = readSharedJson('reference/colour-checks.json');
  const patches: { name: string; R: Reflectance; lab: Lab }[] = checks.chart24.patches.map(
    (p: { name: string; R_x1000: number[] }) => {
      const R = spectrum<'R'>(p.R_x1000.map((v) => v / 1000));
      return { name: p.name, R, lab: labOf(R) };
    },
  );
  const from = checks.cie1931_10nm.wavelengths.indexOf(380);
  const bars = ['xbar', 'ybar', 'zbar'].map((k) => checks.cie1931_10nm[k].slice(from, from + 36));

  test('the components of daylight rebuild the table of D65', () => {
    const table = checks.illuminants_10nm.D65.slice(from, from + 36);
    daylight(6504).forEach((v, i) => {
      expect(Math.abs(v - table[i])).toBeLessThan(0.35);
    });
  });

  /** Renders the chart under a light with no adaptation, as a camera set to daylight does. */
  function comesBack(xyzOf: (R: Reflectance) => XYZ): { mean: number; count: number } {
    const seen = patches.flatMap((p) => {
      const linear = multiplyColumn(FROM_XYZ.srgb, ...xyzOf(p.R));
      return linear.every((v) => v >= 0 && v <= 1) && inSrgb(p.lab)
        ? [{ ...p, rgb: linear.map((v) => Math.round(255 * encode(v))) }]
        : [];
    });
    const grey = seen.findIndex((p) => p.name.startsWith('neutral 6.5'));
    expect(grey).toBeGreaterThanOrEqual(0);
    const chart = picture(seen.length * 20, 20, (x) => seen[Math.floor(x / 20)]!.rgb);
    const set = whiteBalanceAt(chart, (grey + 0.5) / seen.length, 0.5);
    if (!set.ok) throw new Error(set.fault.code);
    let sum = 0;
    for (const p of seen) {
      const [r, g, b] = p.rgb.map((v) => DECODE_8BIT[v]!) as [number, number, number];
      const back = labOfLinear(...multiplyColumn(set.value.matrix, r, g, b));
      sum += deltaE00(back, p.lab);
    }
    return { mean: sum / seen.length, count: seen.length };
  }

  test('from lamp-light (CIE A), within a mean of 2.5', () => {
    const { mean, count } = comesBack((R) => {
      const [X, Y, Z] = toXYZ(R, ILLUMINANT_A, new Float64Array(3));
      return [X!, Y!, Z!];
    });
    console.log(`lamp-light: ${count} patches, mean CIEDE2000 ${mean.toFixed(2)}`);
    expect(count).toBeGreaterThan(8);
    expect(mean).toBeLessThan(2.5);
  });

  test('from a sky of 9000 K, within a mean of 1', () => {
    const S = daylight(9000);
    const weights = bars.map((bar: number[]) => bar.map((v, i) => v * S[i]!));
    const scale = 100 / weights[1]!.reduce((sum: number, v: number) => sum + v, 0);
    const { mean, count } = comesBack(
      (R) =>
        weights.map(
          (w: number[]) => scale * w.reduce((sum, v, i) => sum + v * R[i]!, 0),
        ) as unknown as XYZ,
    );
    console.log(`sky of 9000 K: ${count} patches, mean CIEDE2000 ${mean.toFixed(2)}`);
    expect(count).toBeGreaterThan(12);
    expect(mean).toBeLessThan(1);
  });

  // B. Lindbloom's Bradford matrices between the whites of ASTM E308, 7 decimals.
  test('the adaptation is the published one', () => {
    for (const { from_white, to_white, matrix } of checks.adaptation.bradford)
      adaptationMatrix(from_white, to_white)
        .flat()
        .forEach((v, i) => {
          expect(Math.abs(v - matrix.flat()[i])).toBeLessThan(2e-7);
        });
  });
});
