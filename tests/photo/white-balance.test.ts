import { expect, test } from 'vitest';
import { labOfLinear } from '../../src/colour/rgb.ts';
import { gather } from '../../src/harmony/gather.ts';
import { neutralFaultWords } from '../../src/messages/photograph-messages.ts';
import { sampleSpot } from '../../src/photo/spot-sample.ts';
import {
  daylightWhite,
  type NAMED_LIGHTS,
  whiteBalanceAt,
  whiteBalanceForLight,
} from '../../src/photo/white-balance.ts';
import { picture } from './paint.ts';

const warm = picture(200, 100, (x) => (x < 100 ? [180, 150, 110] : [150, 60, 30]));

function code(result: ReturnType<typeof whiteBalanceAt>) {
  return result.ok ? 'ok' : result.fault.code;
}

test('the spot turns grey and keeps its light; the rest follows', () => {
  const set = whiteBalanceAt(warm, 0.25, 0.5);
  if (!set.ok) throw new Error(neutralFaultWords[set.fault.code]);
  const before = gather(warm);
  const after = gather(warm, { adapt: set.value.matrix });
  if (!before.ok || !after.ok) throw new Error('not gathered');
  const grey = after.value.colours.find((c) => Math.hypot(c.lab[1], c.lab[2]) < 1);
  const was = sampleSpot(warm, 0.25, 0.5);
  if (!was.ok) throw new Error('no spot');
  expect(grey!.lab[0]).toBeCloseTo(was.value.lab[0], 1);
  expect(set.value.exposure).toBe(1);
});

test('a grey card sets the exposure too', () => {
  const set = whiteBalanceAt(warm, 0.25, 0.5, 0.18);
  if (!set.ok) throw new Error('no spot');
  const after = gather(warm, { adapt: set.value.matrix });
  if (!after.ok) throw new Error('not gathered');
  const [L, a, b] = labOfLinear(0.18, 0.18, 0.18);
  const grey = after.value.colours.find((c) => Math.abs(c.lab[0] - L) < 0.5);
  expect(grey!.lab[1]).toBeCloseTo(a, 0);
  expect(grey!.lab[2]).toBeCloseTo(b, 0);
});

test('what cannot be a neutral spot is refused with words', () => {
  expect(
    code(
      whiteBalanceAt(
        picture(50, 50, () => [255, 250, 240]),
        0.5,
        0.5,
      ),
    ),
  ).toBe('clipped');
  expect(
    code(
      whiteBalanceAt(
        picture(50, 50, () => [9, 8, 7]),
        0.5,
        0.5,
      ),
    ),
  ).toBe('too-dark');
  expect(
    code(
      whiteBalanceAt(
        picture(50, 50, () => [200, 10, 10]),
        0.5,
        0.5,
      ),
    ),
  ).toBe('coloured');
  expect(
    code(
      whiteBalanceAt(
        picture(50, 50, () => [90, 90, 90, 0]),
        0.5,
        0.5,
      ),
    ),
  ).toBe('see-through');
  expect(code(whiteBalanceAt(warm, 1.2, 0.5))).toBe('outside');
  const words = Object.values(neutralFaultWords);
  expect(words).toHaveLength(5);
  // What happened, then what to do.
  for (const each of words) expect(each).toMatch(/^That spot .{10,}[.:] .*Touch .{5,}\.$/);
});

test('a spot is a patch, never one pixel, and lies inside at the edge', () => {
  const spot = sampleSpot(warm, 1, 1);
  if (!spot.ok) throw new Error('no spot');
  expect(spot.value).toMatchObject({ side: 5, left: 197, top: 97 });
  expect(
    code(
      whiteBalanceAt(
        picture(1, 1, () => [120, 120, 120]),
        0,
        0,
      ),
    ),
  ).toBe('ok');
});

// CIE 015:2018, 4.1.2: D65 (6504 K) has x, y 0.3127, 0.3290 and D50 (5003 K) 0.3457, 0.3585.
test.each([
  [6504, 0.3127, 0.329],
  [5003, 0.3457, 0.3585],
])('daylight of %d K has the chromaticity of the tables', (kelvin, x, y) => {
  const [X, Y, Z] = daylightWhite(kelvin);
  expect(X / (X + Y + Z)).toBeCloseTo(x, 3);
  expect(Y / (X + Y + Z)).toBeCloseTo(y, 3);
  expect(() => daylightWhite(3000)).toThrow(RangeError);
});

test('a stated light makes warm light cooler, or cool light warmer', () => {
  const blueOf = (light: (typeof NAMED_LIGHTS)[number]) => {
    const [, , row] = whiteBalanceForLight(light).matrix;
    return row[0] + row[1] + row[2];
  };
  expect(blueOf('lamp')).toBeGreaterThan(blueOf('low sun'));
  expect(blueOf('low sun')).toBeGreaterThan(1);
  expect(blueOf('overcast')).toBeLessThan(1);
  expect(blueOf('open shade')).toBeLessThan(blueOf('overcast'));
});

test('a spot that is neutral already changes nothing', () => {
  const set = whiteBalanceAt(
    picture(20, 20, () => [140, 140, 140]),
    0.5,
    0.5,
  );
  if (!set.ok) throw new Error(set.fault.code);
  set.value.matrix.flat().forEach((v, i) => {
    expect(v).toBeCloseTo(i % 4 === 0 ? 1 : 0, 6);
  });
});
