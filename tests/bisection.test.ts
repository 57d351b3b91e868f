import { expect, test } from 'vitest';
import { bisect } from '../src/bisection.ts';

test('encloses the square root of two to 2^-40', () => {
  const [low, high] = bisect(1, 2, (x) => x * x < 2, 40);
  expect(low).toBeLessThanOrEqual(Math.SQRT2);
  expect(high).toBeGreaterThan(Math.SQRT2);
  expect(high - low).toBe(2 ** -40);
});

test('ends earlier where the interval is narrow enough', () => {
  const [low, high] = bisect(
    0,
    1,
    (x) => x < 0.3,
    Infinity,
    (a, b) => b - a < 0.1,
  );
  expect([low, high]).toEqual([0.25, 0.3125]);
});
