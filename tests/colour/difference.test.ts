import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';

test('chromas so small that their products underflow give no NaN', () => {
  expect(deltaE00([0, 0, -1.57e-162], [0, 1.05e-162, 0])).toBeCloseTo(0, 12);
  expect(deltaE00([50, 1e-160, 0], [50, 0, 1e-155])).toBeCloseTo(0, 12);
});
