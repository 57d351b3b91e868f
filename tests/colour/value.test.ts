import { expect, test } from 'vitest';
import { valueOfY, yOfValue } from '../../src/colour/munsell-value.ts';

test('there and back, and rising all the way', () => {
  for (let V = 0; V <= 10; V += 0.01) {
    expect(valueOfY(yOfValue(V))).toBeCloseTo(V, 10);
    expect(yOfValue(V + 0.01)).toBeGreaterThan(yOfValue(V));
  }
});

test('ends at black and white, and lets a lost number through', () => {
  expect([-1, 0, 100, 120].map(valueOfY)).toEqual([0, 0, 10, 10]);
  expect(valueOfY(Number.NaN)).toBeNaN();
});
