import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { chroma, hueDeg, type Lab, labOfLCh } from '../../src/colour/lab.ts';
import { AMOUNTS, VARIANT_WAYS, variantTarget } from '../../src/harmony/variant-target.ts';
import { evenly } from '../evenly.ts';
import { OPPOSITE } from './opposite.ts';
import { runs } from './piles.ts';

/** Ou, Luo, Woodcock, Wright, Color Res. Appl. 29 (2004) 232: warm-cool of a colour. */
const warmCool = (lab: Lab) =>
  -0.5 + 0.02 * chroma(lab) ** 1.07 * Math.cos((((hueDeg(lab) ?? 0) - 50) * Math.PI) / 180);

const paintLike = fc
  .record({
    L: evenly(20, 90),
    C: evenly(0, 60),
    h: evenly(0, 360),
  })
  .map(
    ({ L, C, h }): Lab => [L, C * Math.cos((h * Math.PI) / 180), C * Math.sin((h * Math.PI) / 180)],
  );
const amount = fc.constantFrom(...AMOUNTS);

test('warmer never lowers the published warm-cool measure, cooler never raises it', () => {
  fc.assert(
    fc.property(paintLike, amount, (lab, by) => {
      expect(warmCool(variantTarget(lab, 'warmer', by).lab)).toBeGreaterThanOrEqual(
        warmCool(lab) - 1e-9,
      );
      expect(warmCool(variantTarget(lab, 'cooler', by).lab)).toBeLessThanOrEqual(
        warmCool(lab) + 1e-9,
      );
    }),
    { seed: 1 },
  );
});

test('warmth is turned at constant lightness and chroma, away from neutrals', () => {
  const { lab, stopped } = variantTarget([55, 0, 30], 'warmer', 'middle');
  expect(stopped).toBeNull();
  expect(lab[0]).toBe(55);
  expect(chroma(lab)).toBeCloseTo(30, 9);
  expect(hueDeg(lab)).toBeCloseTo(78, 9);
});

test('at a pole it stops, and says so', () => {
  const nearWarm: Lab = [50, 40 * Math.cos(0.9), 40 * Math.sin(0.9)];
  const { lab, stopped } = variantTarget(nearWarm, 'warmer', 'large');
  expect(hueDeg(lab)).toBeCloseTo(50, 9);
  expect(stopped).toBe('warm pole');
});

test('a neutral moves along the axis between the poles by 2, 4 and 7', () => {
  expect(AMOUNTS.map((by) => chroma(variantTarget([60, 0, 0], 'cooler', by).lab))).toEqual([
    expect.closeTo(2, 9),
    expect.closeTo(4, 9),
    expect.closeTo(7, 9),
  ]);
});

test('lighter and deeper move L* by 4, 8 and 14 and keep chroma; there and back returns', () => {
  let counted = 0;
  fc.assert(
    fc.property(paintLike, amount, (lab, by) => {
      const step = { small: 4, middle: 8, large: 14 }[by];
      const up = variantTarget(lab, 'lighter', by);
      // Stopped at white: another test.
      if (up.stopped) return;
      counted++;
      expect(up.lab[0]).toBeCloseTo(lab[0] + step, 6);
      expect(chroma(up.lab)).toBeCloseTo(chroma(lab), 4);
      const back = variantTarget(up.lab, 'deeper', by).lab;
      for (const i of [0, 1, 2] as const) expect(back[i]).toBeCloseTo(lab[i], 3);
    }),
    { seed: 2 },
  );
  expect(counted).toBeGreaterThan(50);
});

test('brighter and duller change chroma alone by 1.1, 1.25 and 1.5', () => {
  const lab: Lab = [45, 20, -30];
  expect(AMOUNTS.map((by) => chroma(variantTarget(lab, 'brighter', by).lab) / chroma(lab))).toEqual(
    [expect.closeTo(1.1, 5), expect.closeTo(1.25, 5), expect.closeTo(1.5, 5)],
  );
  expect(variantTarget(lab, 'duller', 'large').lab[0]).toBe(45);
});

test('every way of every amount gives a colour, even of black, white and grey', () => {
  for (const lab of [
    [0, 0, 0],
    [100, 0, 0],
    [50, 0, 0],
    [50, 1e-12, 0],
  ] as const)
    for (const way of VARIANT_WAYS)
      for (const by of AMOUNTS)
        expect(variantTarget(lab, way, by).lab.every(Number.isFinite)).toBe(true);
});

test('where neither end is stopped, the opposite way leads back, across the limit of the neutrals too', () => {
  const anyColour = fc
    .record({
      L: evenly(25, 85),
      C: fc.oneof(evenly(0, 60), evenly(5, 10)),
      h: evenly(0, 360),
    })
    .map(({ L, C, h }) => labOfLCh(L, C, h));
  let counted = 0;
  fc.assert(
    fc.property(anyColour, fc.constantFrom(...VARIANT_WAYS), amount, (lab, way, by) => {
      const there = variantTarget(lab, way, by);
      const back = variantTarget(there.lab, OPPOSITE[way], by);
      if (there.stopped || back.stopped) return;
      counted++;
      expect(deltaE00(back.lab, lab)).toBeLessThan(0.05);
    }),
    { seed: 3, numRuns: runs(400) },
  );
  expect(counted).toBeGreaterThan(300);
});

test('a near-neutral that comes to the pole on its way says that it stopped there', () => {
  const warm = variantTarget([26.21, 4.377, 5.623], 'warmer', 'middle');
  expect(hueDeg(warm.lab)).toBeCloseTo(50, 9);
  expect(warm.stopped).toBe('warm pole');
});

test('nothing jumps at the limit of the neutrals', () => {
  for (const h of [0, 45, 90, 140, 200, 231, 320])
    for (const by of AMOUNTS) {
      const below = variantTarget(labOfLCh(50, 8 - 1e-6, h), 'warmer', by).lab;
      const above = variantTarget(labOfLCh(50, 8 + 1e-6, h), 'warmer', by).lab;
      expect(deltaE00(below, above)).toBeLessThan(0.01);
    }
});

test('a neutral that gains a hue at the warm pole stops there, and says so', () => {
  const { lab, stopped } = variantTarget(labOfLCh(50, 6, 50), 'warmer', 'large');
  expect(chroma(lab)).toBeLessThan(8);
  expect(hueDeg(lab)).toBeCloseTo(50, 6);
  expect(stopped).toBe('warm pole');
});
