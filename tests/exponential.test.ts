import { expect, test } from 'vitest';
import { portableExp } from '../src/exponential.ts';

test('e to the power of small numbers, against Math.exp', () => {
  for (let x = -0.6; x <= 0.6; x += 0.01)
    expect(Math.abs(portableExp(x) / Math.exp(x) - 1)).toBeLessThan(4e-7);
  expect(portableExp(0)).toBe(1);
});
