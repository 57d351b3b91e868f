import { expect, test } from 'vitest';
import {
  diagonal,
  inverse,
  type Matrix,
  multiplyColumn,
  multiplyColumnInto,
  product,
} from '../../src/colour/matrix.ts';
import { expectMatrix, expectNear } from './near.ts';

const M: Matrix = [
  [2, -1, 0.5],
  [0.3, 4, 1],
  [-1, 0.2, 3],
];

test('a matrix times its inverse is one', () => {
  expectMatrix(product(M, inverse(M)), diagonal(1, 1, 1), 1e-15);
  expectMatrix(product(inverse(M), M), diagonal(1, 1, 1), 1e-15);
});

test('a product acts from the right', () => {
  const N: Matrix = [
    [1, 2, 3],
    [0, 1, 4],
    [5, 6, 0],
  ];
  expectNear(
    multiplyColumn(product(M, N), 1, 2, 3),
    multiplyColumn(M, ...multiplyColumn(N, 1, 2, 3)),
    1e-12,
  );
  expectNear(multiplyColumnInto(N, 1, 2, 3, new Float64Array(3)), [14, 14, 17], 0);
});

test('a flat matrix has no inverse', () => {
  expect(() =>
    inverse([
      [1, 2, 3],
      [2, 4, 6],
      [0, 0, 1],
    ]),
  ).toThrow(RangeError);
});
