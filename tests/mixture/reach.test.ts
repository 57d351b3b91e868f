import { expect, test } from 'vitest';
import { findMixtures } from '../../src/mixture/find-mixtures.ts';
import { predictColour } from '../../src/mixture/predict.ts';
import { shortfallOf } from '../../src/mixture/shortfall.ts';
import { invented } from './invented.ts';

const earth = invented.paints.find(({ pigment }) => pigment === 'earth')!;
const alone = { ...invented, white: null, paints: [earth] };
const [L, a, b] = predictColour([{ pigment: 'earth', amount: 1 }], alone);

// By design: up to a CIEDE2000 of 1 no difference is seen, and a mixture has reached its colour.
test.each([
  [0.7, true],
  [1.6, false],
])('a colour that one paint misses by %d of CIEDE2000: reached is %s', (by, reachable) => {
  const found = findMixtures(
    [[L + by * (1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2)), a, b]],
    alone,
    { most: 1 },
  );
  if (!found.ok) throw new Error(found.fault.code);
  const [answer] = found.value;
  expect(answer!.deltaE00).toBeCloseTo(by, 1);
  expect(answer!.reachable).toBe(reachable);
  expect(shortfallOf(answer!.target, answer!) === null).toBe(reachable);
});
