import { expect, test } from 'vitest';
import {
  ADAPTATION_CONES,
  adaptationMatrix,
  rgbAdaptationMatrix,
  twoStepAdaptationMatrix,
} from '../../src/colour/adaptation.ts';
import { multiplyColumn } from '../../src/colour/matrix.ts';
import type { XYZ } from '../../src/colour/observer.ts';
import { RGB_WHITE, xyzOfLinear } from '../../src/colour/rgb.ts';
import { expectMatrix, expectNear } from '../colour/near.ts';
import { describeShared, readSharedJson } from '../shared.ts';

type Triple = [number, number, number];

describeShared('chromatic adaptation', () => {
  const checks = readSharedJson('reference/colour-checks.json').adaptation;

  test('cone matrices as printed', () => {
    expectMatrix(ADAPTATION_CONES.bradford, checks.M_bradford, 0);
    expectMatrix(ADAPTATION_CONES.cat16, checks.M_cat16, 0);
  });

  // B. Lindbloom's Bradford matrices (seven decimals; attribution from memory, values recomputed),
  // and that of CSS Color 4 (eight decimals).
  test('Bradford between published whites', () => {
    for (const { from_white, to_white, matrix } of checks.bradford)
      expectMatrix(adaptationMatrix(from_white, to_white, 'bradford'), matrix, 6e-8);
  });

  test('CAT16 in one step', () => {
    for (const { from_white, to_white, matrix, sample } of checks.cat16_one_step) {
      const cat16 = adaptationMatrix(from_white, to_white, 'cat16');
      expectMatrix(cat16, matrix, 6e-8);
      expectNear(multiplyColumn(cat16, ...(sample.XYZ as Triple)), sample.cat16, 6e-8);
      const bradford = adaptationMatrix(from_white, to_white, 'bradford');
      expectNear(multiplyColumn(bradford, ...(sample.XYZ as Triple)), sample.bradford, 6e-8);
    }
  });

  // Q. Zhai, M. R. Luo, Optics Express 26 (2018) 7724-7737: their worked example.
  test('CAT16 in two steps', () => {
    for (const row of checks.two_step_zhai_luo_2018) {
      const matrix = twoStepAdaptationMatrix(
        row.XYZ_wb,
        row.D_b,
        row.XYZ_wd,
        row.D_d,
        'cat16',
        row.XYZ_wo,
      );
      expectNear(multiplyColumn(matrix, ...(row.XYZ_b as Triple)), row.CAT16, 1e-7);
    }
  });
});

const LAMP: XYZ = [109.85, 100, 35.585];

test('two steps with both degrees 1 are one step', () => {
  const one = adaptationMatrix(LAMP, RGB_WHITE, 'cat16');
  expectMatrix(twoStepAdaptationMatrix(LAMP, 1, RGB_WHITE, 1, 'cat16'), one, 1e-12);
});

test('how bright the whites are does not matter', () => {
  const dim = (white: XYZ, by: number): XYZ => [white[0] * by, white[1] * by, white[2] * by];
  const plain = twoStepAdaptationMatrix(LAMP, 0.9, RGB_WHITE, 0.8);
  const dimmed = twoStepAdaptationMatrix(
    dim(LAMP, 0.3),
    0.9,
    dim(RGB_WHITE, 2),
    0.8,
    'cat16',
    [70, 70, 70],
  );
  expectMatrix(dimmed, plain, 1e-12);
  expectMatrix(
    adaptationMatrix(dim(LAMP, 0.3), dim(RGB_WHITE, 2)),
    adaptationMatrix(LAMP, RGB_WHITE),
    1e-12,
  );
});

test('a white lands on the other white, and there and back changes nothing', () => {
  for (const kind of ['bradford', 'cat16'] as const) {
    expectNear(multiplyColumn(adaptationMatrix(LAMP, RGB_WHITE, kind), ...LAMP), RGB_WHITE, 1e-12);
    const back = multiplyColumn(
      adaptationMatrix(RGB_WHITE, LAMP, kind),
      ...multiplyColumn(adaptationMatrix(LAMP, RGB_WHITE, kind), 12, 34, 56),
    );
    expectNear(back, [12, 34, 56], 1e-12);
  }
});

test('a spot called neutral turns grey and keeps its luminance', () => {
  const spot: Triple = [0.5, 0.4, 0.25];
  const xyz = xyzOfLinear(...spot);
  const grey = multiplyColumn(rgbAdaptationMatrix(xyz, RGB_WHITE), ...spot);
  expectNear(grey, [xyz[1] / 100, xyz[1] / 100, xyz[1] / 100], 1e-12);
});

test('a white without light is refused', () => {
  expect(() => adaptationMatrix([0, 0, 0], RGB_WHITE)).toThrow(RangeError);
});
