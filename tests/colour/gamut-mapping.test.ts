import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hexOf, labOfHex } from '../../src/colour/gamut-mapping.ts';
import { hueTurnDeg, type Lab } from '../../src/colour/lab.ts';
import {
  labOfOklab,
  oklabChroma,
  oklabHueDeg,
  oklabOfLab,
  oklabOfLCh,
} from '../../src/colour/oklab.ts';
import { inP3, inSrgb, labOfLinear } from '../../src/colour/rgb.ts';
import { evenly } from '../evenly.ts';

const hexDigits = fc
  .integer({ min: 0, max: 0xffffff })
  .map((n) => `#${n.toString(16).padStart(6, '0')}`);

test('every 8-bit colour comes back as itself', () => {
  fc.assert(
    fc.property(hexDigits, (hex) => {
      expect(hexOf(labOfHex(hex))).toBe(hex);
      expect(inSrgb(labOfHex(hex)) && inP3(labOfHex(hex))).toBe(true);
    }),
    { seed: 1 },
  );
});

/** The most chroma (OKLab) that sRGB holds at a lightness and hue, by halving. */
function largestChroma(L: number, h: number): number {
  let [held, beyond] = [0, 0.4];
  for (let i = 0; i < 30; i++) {
    const half = (held + beyond) / 2;
    if (inSrgb(labOfOklab(oklabOfLCh(L, half, h)))) held = half;
    else beyond = half;
  }
  return held;
}

test('what a screen cannot show keeps lightness and hue and gives up chroma', () => {
  fc.assert(
    fc.property(evenly(0.3, 0.9), evenly(0.34, 0.4), evenly(0, 360), (L, C, h) => {
      const shown = oklabOfLab(labOfHex(hexOf(labOfOklab(oklabOfLCh(L, C, h)))));
      // Up to 0.02 may be cut off where nobody notices, and 8 bits add up to 0.003.
      const turn = hueTurnDeg(h, oklabHueDeg(shown)!);
      const off = 2 * oklabChroma(shown) * Math.sin((turn * Math.PI) / 360);
      expect(Math.hypot(shown[0] - L, off)).toBeLessThan(0.023);
      expect(oklabChroma(shown)).toBeLessThan(C);
      // No more is given up than must be: what sRGB holds of that lightness and hue is shown.
      expect(oklabChroma(shown)).toBeGreaterThan(largestChroma(L, h) - 0.003);
    }),
    { seed: 2 },
  );
});

test('is as strong as the screen allows', () => {
  // sRGB blue itself lies on the edge: more chroma in its direction must come back to it.
  const [L, a, b] = oklabOfLab(labOfHex('#0000ff'));
  const shown = oklabOfLab(labOfHex(hexOf(labOfOklab([L, a * 1.3, b * 1.3]))));
  expect(Math.hypot(shown[0] - L, shown[1] - a, shown[2] - b)).toBeLessThan(0.02);
});

test('ends at black and white', () => {
  expect(hexOf([120, 3, 3])).toBe('#ffffff');
  expect(hexOf([-4, 0, 0])).toBe('#000000');
  expect(() => hexOf([Number.NaN, 0, 0])).toThrow(RangeError);
});

test('reach of the two screens', () => {
  const p3Green = labOfLinear(0, 1, 0, 'display-p3');
  expect(inSrgb(p3Green)).toBe(false);
  expect(inP3(p3Green)).toBe(true);
  expect(inP3([50, 100, 100])).toBe(false);
});

test('a word that is no colour is refused', () => {
  for (const text of ['', '#12345', 'blue', '#gggggg'])
    expect(() => labOfHex(text)).toThrow(RangeError);
});

test('CIELAB and OKLab lead back to each other, outside sRGB too', () => {
  fc.assert(
    fc.property(evenly(1, 100), evenly(-90, 90), evenly(-90, 90), (L, a, b) => {
      const back: Lab = labOfOklab(oklabOfLab([L, a, b]));
      expect(Math.abs(back[0] - L)).toBeLessThan(1e-8);
      expect(Math.abs(back[1] - a)).toBeLessThan(1e-8);
      expect(Math.abs(back[2] - b)).toBeLessThan(1e-8);
    }),
    { seed: 4 },
  );
});
