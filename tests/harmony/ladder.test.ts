import { expect, test } from 'vitest';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';
import { colourHistograms, ladder, localColour } from '../../src/harmony/local-colour.ts';
import { downsampled } from '../../src/photo/downsample.ts';
import { picture } from '../photo/paint.ts';

/** One thing, as grey as its column: 0 to 199 of 255 from left to right. */
const work = downsampled(picture(200, 50, (x) => [x, x, x]))!;
const [thing] = colourHistograms(work, new Uint8Array(work.L.length), 1);
const steps = ladder(thing!);

// By design: narrow gleams and narrow darks, most of a thing between its light and its half-tone.
test('six steps from the highlight to the deepest fold, at fixed shares of the thing', () => {
  expect(steps.map(({ step }) => step)).toEqual(LADDER_STEPS);
  const shares = [0.04, 0.22, 0.34, 0.22, 0.14, 0.04];
  for (const [i, { share }] of steps.entries()) expect(share).toBeCloseTo(shares[i]!, 9);
});

test('each is the mean of its part, and lightness only falls', () => {
  const lightness = steps.map(({ lab }) => lab[0]);
  expect(lightness).toEqual(lightness.toSorted((a, b) => b - a));
  // sRGB 192 to 199, the lightest 4 % of the columns, is about L* 79; 0 to 7 is about 1.
  expect(lightness[0]).toBeCloseTo(78.9, 0);
  expect(lightness[5]).toBeLessThan(2);
});

test('the local colour is the median, not the mean', () => {
  // sRGB 99 is L* 42.
  expect(localColour(thing!)[0]).toBeCloseTo(42, 0);
});
