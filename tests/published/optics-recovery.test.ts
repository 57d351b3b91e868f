import { inverse, Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { labOfXYZ } from '../../src/colour/lab.ts';
import { D65 } from '../../src/colour/observer.ts';
import { recoverReflectance } from '../../src/optics/reflectance-recovery.ts';
import { NO_SURFACE } from '../../src/optics/surface.ts';
import { describeShared, readSharedJson } from '../shared.ts';

interface Case {
  readonly name: string;
  readonly linear_rgb: [number, number, number];
  readonly LHTSS: number[];
}

// S. A. Burns, Numerical methods for smoothest reflectance reconstruction, Color Res. Appl. 45 (2020)
// 8-21; curves without a surface, tolerance as given with them.
describeShared('smoothest reflectances of seven colours', () => {
  const checks = readSharedJson('reference/colour-checks.json');
  const { cases, tolerance }: { cases: Case[]; tolerance: number } = checks.reflectance_recovery;
  // Their colours are linear sRGB, each channel scaled so that the weights' own white is 1, 1, 1.
  const toXYZ = new Matrix(checks.srgb.M_exact);
  const whiteRgb = inverse(toXYZ).mmul(Matrix.columnVector([...D65.white]));

  test('there are seven', () => expect(cases).toHaveLength(7));
  test.each(cases)('$name', ({ linear_rgb, LHTSS }) => {
    const scaled = Matrix.mul(Matrix.columnVector(linear_rgb), whiteRgb);
    const [X, Y, Z] = toXYZ.mmul(scaled).to1DArray();
    const found = recoverReflectance(labOfXYZ(X!, Y!, Z!, D65.white), NO_SURFACE);
    expect(found.exact).toBe(true);
    found.R.forEach((r, band) => {
      expect(Math.abs(r - LHTSS[band]!)).toBeLessThan(tolerance);
    });
  });
});
