import { describe, expect, test } from 'vitest';
import { deltaE00, deltaE00Of, deltaE00QuadraticForm } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { squaredByQuadraticForm } from './quadratic-form.ts';
import { seeded } from './random.ts';

test('chromas so small that their products underflow give no NaN', () => {
  expect(deltaE00([0, 0, -1.57e-162], [0, 1.05e-162, 0])).toBeCloseTo(0, 12);
  expect(deltaE00([50, 1e-160, 0], [50, 0, 1e-155])).toBeCloseTo(0, 12);
});

describe('the quadratic form at a target', () => {
  const away = (target: Lab, step: number, random: () => number): number => {
    const d = [random() - 0.5, random() - 0.5, random() - 0.5];
    const scale = step / Math.hypot(...d);
    const [dL, da, db] = d.map((v) => v * scale) as [number, number, number];
    const [L, a, b] = target;
    const exact = deltaE00Of(L, a, b, L + dL, a + da, b + db);
    return Math.sqrt(squaredByQuadraticForm(deltaE00QuadraticForm(target), dL, da, db)) / exact - 1;
  };
  const worstOf = (step: number) => {
    const random = seeded(7);
    const errors = Array.from({ length: 2000 }, () => {
      const target: Lab = [5 + 90 * random(), 160 * random() - 80, 160 * random() - 80];
      return Math.abs(away(target, step, random));
    }).sort((x, y) => x - y);
    return { median: errors[1000]!, worst: errors.at(-1)! };
  };

  test('is CIEDE2000 in the limit', () => {
    expect(worstOf(1e-5).worst).toBeLessThan(1e-3);
  });
  test('is off by a few per cent two units away', () => {
    const { median, worst } = worstOf(2);
    console.info(
      `2 units of Lab away: median ${(100 * median).toFixed(2)} %, worst ${(100 * worst).toFixed(1)} %`,
    );
    expect(median).toBeLessThan(0.03);
  });
  test('at a neutral has a stretched by half and nothing else', () => {
    const form = deltaE00QuadraticForm([50, 0, 0]);
    expect([...form].map((v) => Math.round(v * 1e9) / 1e9)).toEqual([1, 0, 0, 0, 2.25, 0, 0, 0, 1]);
  });
});
