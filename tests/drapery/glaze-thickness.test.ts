import { expect, test } from 'vitest';
import { glazeThicknesses } from '../../src/drapery/glaze-selection.ts';

// Common practice: the gleams stay bare, the glaze grows into the folds; two coats are 30 micrometres.
test.each([0.001, 0.004, 0.01, 0.03])('a glaze of %d mm over the local colour', (localMm) => {
  const [bare, ...films] = glazeThicknesses(localMm);
  expect(bare).toBe(0);
  expect(films).toHaveLength(5);
  expect(films[1]).toBeCloseTo(Math.min(localMm, 0.03), 3);
  for (const [i, filmMm] of films.entries()) {
    expect(filmMm).toBeGreaterThanOrEqual(0.001);
    expect(filmMm).toBeLessThanOrEqual(0.03);
    if (i > 0) expect(filmMm).toBeGreaterThanOrEqual(films[i - 1]!);
  }
});

test('over the deepest fold it is 3.4 times as thick as over the local colour, where there is room', () => {
  const films = glazeThicknesses(0.005);
  expect(films[5]! / films[2]!).toBeCloseTo(3.4, 9);
  expect(glazeThicknesses(0.02)[5]).toBe(0.03);
});
