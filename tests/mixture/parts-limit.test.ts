import { expect, test } from 'vitest';
import type { Lab } from '../../src/colour/lab.ts';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import { COARSE_PARTS, FINE_PARTS, type PartLimits } from '../../src/mixture/whole-parts.ts';
import { invented } from './invented.ts';

const targets: Lab[] = [
  [55, 2, 3],
  [62, 18, 34],
  [80, -2, 10],
];
const totals = (limits: PartLimits) => {
  const found = findMixtures(targets, invented, { limits, quick: true, alternatives: 0 });
  if (!found.ok) throw new Error(found.fault.code);
  return found.value.flatMap((answer) =>
    [answer, answer.simplest].map(({ parts }) => {
      for (const { parts: count } of parts) expect(Number.isInteger(count)).toBe(true);
      return parts.reduce((sum, { parts: count }) => sum + count, 0);
    }),
  );
};

// By design: a bench that measures coarsely takes twelve parts in all, a fine one thirty-two.
test('twelve parts are the most of a coarse bench, thirty-two of a fine one', () => {
  const [coarse, fine] = [totals(COARSE_PARTS), totals(FINE_PARTS)];
  expect(coarse).toHaveLength(6);
  expect(Math.max(...coarse)).toBeLessThanOrEqual(12);
  expect(Math.max(...fine)).toBeGreaterThan(12);
  expect(Math.max(...fine)).toBeLessThanOrEqual(32);
});
