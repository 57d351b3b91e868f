import { expect, test } from 'vitest';
import table from '../../src/colour/data/weights.json' with { type: 'json' };
import { deltaE00 } from '../../src/colour/difference.ts';
import { spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf, labOfXYZ } from '../../src/colour/lab.ts';
import { D50, D65, ILLUMINANT_A, type Light, toXYZ } from '../../src/colour/observer.ts';
import { expectNear } from '../colour/near.ts';
import { describeShared, readShared, readSharedJson } from '../shared.ts';

const LIGHTS: readonly Light[] = [D65, D50, ILLUMINANT_A];
type Triple = [number, number, number];

describeShared('weights of light and observer', () => {
  const checks = readSharedJson('reference/colour-checks.json');

  // CIE 015:2018 tables by the rule of ASTM E2022; ends folded in as ASTM E308 asks.
  test.each(LIGHTS)('$name: the full table with its ends folded in', ({ name }) => {
    const { full, wavelengths_full } = checks.weights_10nm;
    const folded = Array.from({ length: 36 }, () => [0, 0, 0]);
    (full[name] as Triple[]).forEach((row, i) => {
      const nm = Math.min(730, Math.max(380, wavelengths_full[i]));
      for (let c = 0; c < 3; c++) folded[(nm - 380) / 10]![c]! += row[c]!;
    });
    table.weights[name].forEach((row, band) => {
      for (let c = 0; c < 3; c++) expect(row[c]).toBeCloseTo(folded[band]![c]!, 5);
    });
  });

  // ASTM E308 prints three decimals; its D50 row is from memory and differs by 0.008 in Z, as the
  // weights here do by construction from the CIE tables.
  test('whites', () => {
    const printed = checks.white_points.ASTM_E308_2deg;
    for (const light of [D65, ILLUMINANT_A])
      for (let c = 0; c < 3; c++)
        expect(Math.abs(light.white[c]! - printed[light.name][c])).toBeLessThan(6e-4);
    for (let c = 0; c < 3; c++) expect(Math.abs(D50.white[c]! - printed.D50[c])).toBeLessThan(9e-3);
    for (const light of LIGHTS)
      for (let c = 0; c < 3; c++)
        expect(light.white[c]).toBeCloseTo(checks.weights_10nm.column_sums[light.name][c], 4);
  });
});

interface Patch {
  readonly name: string;
  readonly R_x1000: number[];
  readonly xyY_D50_published: Triple;
  readonly [column: string]: unknown;
}

// D. Pascale, mean reflectance of 30 classic 24-patch charts, 2012, with his xyY under D50.
describeShared('the classic chart of 24 patches', () => {
  const patches: Patch[] = readSharedJson('reference/colour-checks.json').chart24.patches;
  const reflectance = (patch: Patch) => spectrum<'R'>(patch.R_x1000.map((v) => v / 1000));
  const xyzUnder = (patch: Patch, light: Light) =>
    toXYZ(reflectance(patch), light, new Float64Array(3));

  test('24 patches', () => expect(patches).toHaveLength(24));

  test.each(patches)('$name: XYZ and CIELAB under D65, D50 and A', (patch) => {
    for (const light of LIGHTS) {
      const xyz = xyzUnder(patch, light);
      const printed = patch[`XYZ_${light.name}`] as Triple;
      // Printed to four decimals.
      expectNear(xyz, printed, 1.01e-4);
      const lab = labOf(reflectance(patch), light);
      const printedLab = patch[`Lab_${light.name}`] as Triple;
      expectNear(lab, printedLab, 6e-4);
      expect(deltaE00(lab, printedLab)).toBeLessThan(0.001);
    }
  });

  // ArgyllCMS, an independent integration of the same spectra.
  test.each(patches)('$name: another program integrates alike', (patch) => {
    for (const light of [D50, D65]) {
      const xyz = xyzUnder(patch, light);
      const theirs = patch[`argyll_XYZ_${light.name}`] as Triple;
      expectNear(xyz, theirs, 6e-4);
    }
  });

  // The spectra carry three decimals only: black is off by 0.169.
  test.each(patches)('$name: within 0.2 of the published xyY', (patch) => {
    const [x, y, Y] = patch.xyY_D50_published;
    const published = labOfXYZ((100 * x * Y) / y, 100 * Y, (100 * (1 - x - y) * Y) / y, D50.white);
    expect(deltaE00(labOf(reflectance(patch), D50), published)).toBeLessThan(0.2);
  });

  // cie1931-d65-10nm.csv: plain weighted sums, against their own white.
  test('plain 10 nm sums differ by at most 0.02', () => {
    const rows = readShared('reference/cie1931-d65-10nm.csv')
      .split('\n')
      .filter((line) => /^\d/.test(line))
      .map((line) => line.split(',').map(Number));
    const weights = rows.map((row) => [row[0]!, ...row.slice(-3)]);
    const sum = (R: (nm: number) => number): Triple => {
      const xyz: Triple = [0, 0, 0];
      for (const [nm, ...w] of weights) for (let c = 0; c < 3; c++) xyz[c]! += R(nm!) * w[c]!;
      return xyz;
    };
    const white = sum(() => 1);
    for (const patch of patches) {
      const at = (nm: number) =>
        patch.R_x1000[(Math.min(730, Math.max(380, nm)) - 380) / 10]! / 1000;
      const plain: Lab = labOfXYZ(...sum(at), white);
      expect(deltaE00(plain, labOf(reflectance(patch)))).toBeLessThan(0.02);
    }
  });
});
