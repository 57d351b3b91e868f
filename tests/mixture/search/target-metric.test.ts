import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../../src/colour/difference.ts';
import type { Lab } from '../../../src/colour/lab.ts';
import { TargetMetric } from '../../../src/mixture/search/target-metric.ts';

// Thousandths: a chroma of 1e-19 is neutral to one formula and a hue to another.
const axis = (limit: number) =>
  fc.integer({ min: -1000 * limit, max: 1000 * limit }).map((v) => v / 1000);
const lightness = fc.integer({ min: 0, max: 100_000 }).map((v) => v / 1000);
const colour = fc.tuple(lightness, axis(90), axis(90));

test('its three squares sum to CIEDE2000', () => {
  fc.assert(
    fc.property(colour, colour, (target, sample) => {
      const sum = new TargetMetric(target).exact(...sample);
      expect(Math.sqrt(sum)).toBeCloseTo(deltaE00(target, sample), 8);
    }),
    { seed: 1 },
  );
});

test('its other writing is equal up to hues 130 degrees apart', () => {
  const hue = (lab: Lab) => Math.atan2(lab[2], lab[1]);
  fc.assert(
    fc.property(colour, colour, (target, sample) => {
      const apart = Math.abs(((hue(sample) - hue(target) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
      // a* is stretched before hues are taken, by up to half.
      fc.pre(apart < (100 * Math.PI) / 180);
      const sum = new TargetMetric(target).near(...sample);
      expect(Math.sqrt(sum)).toBeCloseTo(deltaE00(target, sample), 3);
    }),
    { seed: 2 },
  );
});

test('its slopes are those of its terms', () => {
  const metric = new TargetMetric([52, 21, -33]);
  const at: Lab = [55, 30, -20];
  const sum = metric.slopes(...at);
  expect(sum).toBe(metric.exact(...at));
  const step = 1e-5;
  for (const i of [0, 1, 2] as const) {
    const moved: [number, number, number] = [...at];
    moved[i] += step;
    metric.exact(...at);
    const before = Array.from(metric.r);
    metric.exact(...moved);
    for (const k of [0, 1, 2] as const) {
      const slope = (metric.r[k]! - before[k]!) / step;
      expect(metric.local[3 * k + i]).toBeCloseTo(slope, 3);
    }
  }
});
