import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';

// Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21, table 1: rows 1 to 3, where the blues are tilted, 17 and 25.
test.each([
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [[50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
  [[50, 2.5, 0], [73, 25, -18], 27.1492],
  [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
] as const)('%j and %j differ by %d', (x, y, printed) => {
  expect(deltaE00(x, y)).toBeCloseTo(printed, 4);
  expect(deltaE00(y, x)).toBeCloseTo(printed, 4);
});
