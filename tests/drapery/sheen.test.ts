import { expect, test } from 'vitest';
import { FABRIC_SHEENS, FABRICS, lightnesses } from '../../src/drapery/fabric.ts';

const ends = { lightest: 88, deepest: 18, white: 96 };
const ladderOf = (stuff: (typeof FABRICS)[number], even = false) =>
  lightnesses(52, ends, stuff, even);

// Common practice, no published source: satin flashes, linen is crisp, velvet and wool take the light dully.
test('the gleam of satin is the lightest, then linen, velvet and wool', () => {
  const gleams = (['satin', 'linen', 'velvet', 'wool'] as const).map((one) => ladderOf(one)[0]!);
  for (let i = 1; i < 4; i++) expect(gleams[i - 1]).toBeGreaterThan(gleams[i]!);
  // Satin goes nearly all of the way to the lightest that the shelf has.
  expect(gleams[0]).toBeGreaterThan(85);
  expect(gleams[3]).toBeLessThan(75);
});

test.each(FABRICS)('%s falls from the gleam to the deepest fold, local colour third', (stuff) => {
  for (const steps of [ladderOf(stuff), ladderOf(stuff, true)]) {
    expect(steps).toHaveLength(6);
    expect(steps[2]).toBe(52);
    for (let i = 1; i < 6; i++) expect(steps[i - 1]).toBeGreaterThan(steps[i]!);
    expect(steps[0]).toBeLessThanOrEqual(ends.white);
    expect(steps[5]).toBeGreaterThanOrEqual(ends.deepest);
  }
  expect(FABRIC_SHEENS[stuff].shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
});
