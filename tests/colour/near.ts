import { expect } from 'vitest';

/** Every number within the tolerance of the printed one, in order. */
export function expectNear(
  got: ArrayLike<number>,
  printed: readonly number[],
  tolerance: number,
): void {
  expect(got.length).toBe(printed.length);
  for (const [i, v] of printed.entries())
    expect(Math.abs(got[i]! - v), `number ${i}: ${got[i]} for ${v}`).toBeLessThanOrEqual(tolerance);
}

export function expectMatrix(
  got: readonly (readonly number[])[],
  printed: readonly (readonly number[])[],
  tolerance: number,
): void {
  expect(got.length).toBe(printed.length);
  for (const [i, row] of printed.entries()) expectNear(got[i]!, row, tolerance);
}
