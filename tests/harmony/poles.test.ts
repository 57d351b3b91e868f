import { expect, test } from 'vitest';
import { chroma, hueDeg, labOfLCh } from '../../src/colour/lab.ts';
import {
  type VariantAmount,
  type VariantWay,
  variantTarget,
} from '../../src/harmony/variant-target.ts';

// Ou, Luo, Woodcock, Wright, Color Res. Appl. 29 (2004) 232: warmest at hue 50°, coolest at 230°.
// By design: a hue turns by 6, 12 or 20 degrees the shorter way to a pole, and stops there.
test.each<[number, VariantWay, VariantAmount, number, string | null]>([
  [80, 'warmer', 'small', 74, null],
  [20, 'warmer', 'middle', 32, null],
  [120, 'warmer', 'large', 100, null],
  [180, 'cooler', 'small', 186, null],
  [270, 'cooler', 'middle', 258, null],
  [300, 'cooler', 'large', 280, null],
  [45, 'warmer', 'middle', 50, 'warm pole'],
  [65, 'warmer', 'large', 50, 'warm pole'],
  [226, 'cooler', 'small', 230, 'cool pole'],
  [245, 'cooler', 'large', 230, 'cool pole'],
])('hue %d° %s, %s: %d°', (from, way, amount, to, stopped) => {
  const varied = variantTarget(labOfLCh(55, 30, from), way, amount);
  expect(hueDeg(varied.lab)).toBeCloseTo(to, 6);
  expect(varied.lab[0]).toBe(55);
  expect(chroma(varied.lab)).toBeCloseTo(30, 9);
  expect(varied.stopped).toBe(stopped);
});
