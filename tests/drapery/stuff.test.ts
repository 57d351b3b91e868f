import { describe, expect, test } from 'vitest';
import { FABRICS, lightnesses, shareOf } from '../../src/drapery/fabric.ts';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';

const ENDS = { lightest: 90, deepest: 10, white: 97 };
const close = (values: readonly number[]) => values.map((v) => expect.closeTo(v, 9));

describe('six lightnesses of a cloth at L* 50, on a shelf from 10 to 90', () => {
  // Above by 40 and below by 40: each step is its share of one of them.
  test.each([
    ['linen', [82, 66, 50, 50 - 0.32 * 34, 50 - 0.66 * 34, 16]],
    ['wool', [70, 59.6, 50, 50 - 0.34 * 36, 50 - 0.68 * 36, 14]],
    ['satin', [88, 64.44, 50, 34.8, 18.8, 10]],
    ['velvet', [72, 58.8, 50, 31.6, 18, 10]],
  ] as const)('%s', (stuff, expected) => {
    expect(lightnesses(50, ENDS, stuff, false)).toEqual(close(expected));
  });

  test('satin flashes highest and parts furthest from its light; velvet keeps its body dark', () => {
    const of = Object.fromEntries(FABRICS.map((one) => [one, lightnesses(50, ENDS, one, false)]));
    const gap = (stuff: string) => of[stuff]![0]! - of[stuff]![1]!;
    for (const other of ['linen', 'wool', 'velvet']) {
      expect(of.satin![0]).toBeGreaterThan(of[other]![0]!);
      expect(gap('satin')).toBeGreaterThan(gap(other));
    }
    for (const other of ['linen', 'wool', 'satin'])
      expect(of.velvet![3]).toBeLessThan(of[other]![3]!);
  });

  test('evenly spaced when asked', () => {
    expect(lightnesses(50, ENDS, 'satin', true)).toEqual(
      close([88, 69, 50, 50 - 40 / 3, 50 - 80 / 3, 10]),
    );
  });

  test('a highlight that comes within 4 of the white is the white', () => {
    const [top, light] = lightnesses(92, { lightest: 96, deepest: 10, white: 97 }, 'satin', false);
    expect([top, light]).toEqual(close([97, 92]));
  });

  test('lights and shadows keep 5 and 7 where the stuff alone would give less', () => {
    const steps = lightnesses(50, { lightest: 56, deepest: 42.5, white: 97 }, 'wool', false);
    expect(steps[0]).toBeCloseTo(55, 9);
    expect(steps[5]).toBeCloseTo(43, 9);
  });
});

test.each(FABRICS)('the shares of %s are the whole cloth, and satin masses its darks', (stuff) => {
  expect(LADDER_STEPS.reduce((sum, step) => sum + shareOf(stuff, step), 0)).toBeCloseTo(1, 12);
  const dark = (one: typeof stuff) => shareOf(one, 'shadow') + shareOf(one, 'deepest fold');
  if (stuff === 'linen' || stuff === 'wool') expect(dark(stuff)).toBeLessThan(dark('satin'));
  else expect(dark(stuff)).toBeGreaterThanOrEqual(dark('satin'));
});
