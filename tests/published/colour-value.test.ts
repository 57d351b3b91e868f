import { expect, test } from 'vitest';
import { yOfL } from '../../src/colour/lab.ts';
import { munsellValue, valueOfY, yOfValue } from '../../src/colour/munsell-value.ts';
import { describeShared, readSharedJson } from '../shared.ts';

interface Rung {
  readonly V: number;
  readonly Y: number;
  readonly L: number;
}

// ASTM D1535: the quintic, its printed inversions and the ladder in half steps.
describeShared('Munsell value', () => {
  const checks = readSharedJson('reference/colour-checks.json').munsell;

  test('published inversions', () => {
    for (const { Y, V } of checks.Y_to_V) expect(valueOfY(Y)).toBeCloseTo(V, 8);
  });
  test('the ladder', () => {
    const ladder: Rung[] = checks.value_ladder;
    expect(ladder).toHaveLength(21);
    for (const { V, Y, L } of ladder) {
      expect(yOfValue(V)).toBeCloseTo(Y, 5);
      expect(valueOfY(Y)).toBeCloseTo(V, 5);
      expect(munsellValue([L, 3, -4])).toBeCloseTo(V, 3);
    }
  });
});

// Colour-checks, section 10: L* exceeds ten times the value by 0.06 to 1.06 between 1 and 9.5.
test('L* is close to ten times the value', () => {
  for (let L = 11; L <= 95; L++) {
    const excess = L - 10 * valueOfY(yOfL(L));
    expect(excess).toBeGreaterThan(0.05);
    expect(excess).toBeLessThan(1.07);
  }
});
