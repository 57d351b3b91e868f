import { afterEach, describe, expect, test } from 'vitest';
import { labOfHex } from '../../src/colour/hex.ts';
import { labOfLinear } from '../../src/colour/rgb.ts';
import { blend, brightness } from '../../src/ui/drawn/blend.ts';
import { isNearest, isWide, shownOf } from '../../src/ui/drawn/screen.ts';

const P3_RED = labOfLinear(1, 0, 0, 'display-p3');
const BEYOND_P3: [number, number, number] = [50, -110, 60];

afterEach(() => {
  isWide.value = false;
});

describe('what the screen is told to show', () => {
  test('what sRGB holds is #rrggbb on every screen', () => {
    for (const wide of [false, true]) {
      isWide.value = wide;
      expect(shownOf(labOfHex('#6b4a2f'))).toBe('#6b4a2f');
      expect(isNearest(shownOf(labOfHex('#6b4a2f')))).toBe(false);
    }
  });

  test('the red of Display P3 is itself on a wide screen, and marked as the nearest on another', () => {
    expect(isNearest(shownOf(P3_RED))).toBe(true);
    isWide.value = true;
    expect(shownOf(P3_RED)).toMatch(/^color\(display-p3 (1\.0000|0\.999\d) 0\.0\d+ 0\.0\d+\)$/);
    expect(isNearest(shownOf(P3_RED))).toBe(false);
  });

  test('what no screen shows is marked on all', () => {
    for (const wide of [false, true]) {
      isWide.value = wide;
      expect(isNearest(shownOf(BEYOND_P3))).toBe(true);
    }
  });
});

describe('soft edges between colours of different screens', () => {
  test('of two colours of sRGB they stay in sRGB', () => {
    expect(blend('#000000', '#ffffff', 0.5)).toBe('#bcbcbc');
    expect(blend('rgb(0 0 0 / 1)', '#ffffff', 0)).toBe('#000000');
  });

  test('with a wide one they are wide, and white stays white', () => {
    expect(blend('#ffffff', 'color(display-p3 1 0 0)', 0)).toBe(
      'color(display-p3 1.0000 1.0000 1.0000)',
    );
    expect(blend('#000000', 'color(display-p3 1 0 0)', 1)).toBe(
      'color(display-p3 1.0000 0.0000 0.0000)',
    );
  });

  test('brightness is told of all of them', () => {
    expect(brightness('rgb(255 255 255 / 1)')).toBeCloseTo(1, 6);
    expect(brightness('color(display-p3 1.0000 1.0000 1.0000)')).toBeCloseTo(1, 3);
  });
});
