import { expect, test } from 'vitest';
import {
  adaptationMatrix,
  rgbAdaptationMatrix,
  twoStepAdaptationMatrix,
} from '../../src/colour/adaptation.ts';
import { multiplyColumn } from '../../src/colour/matrix.ts';
import type { XYZ } from '../../src/colour/observer.ts';
import { RGB_WHITE, xyzOfLinear } from '../../src/colour/rgb.ts';
import { expectMatrix, expectNear } from './near.ts';

type Triple = [number, number, number];
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
