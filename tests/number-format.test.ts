import { expect, test } from 'vitest';
import { plainNumber } from '../src/number-format.ts';

test.each([
  [7.25, 1, 1, '7.3'],
  [7, 1, 1, '7.0'],
  [1234.5, 0, 2, '1234.5'],
  [100, 0, 2, '100'],
  [0.25, 1, 3, '0.25'],
  [3, 1, 3, '3.0'],
  [-0.5, 0, 1, '-0.5'],
  [1000, 0, 0, '1000'],
])('%d with %d to %d decimals is %s', (value, least, most, text) => {
  expect(plainNumber(value, least, most)).toBe(text);
});
