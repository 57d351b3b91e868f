import { afterEach, describe, expect, test } from 'vitest';
import { labOfHex } from '../../src/colour/gamut-mapping.ts';
import { labOfLinear } from '../../src/colour/rgb.ts';
import { blendLight, relativeLuminance } from '../../src/drawing/light-blend.ts';
import { cssColourOf, isGamutMapped, isWideGamut } from '../../src/ui/state/screen-colour.ts';

const P3_RED = labOfLinear(1, 0, 0, 'display-p3');
const BEYOND_P3: [number, number, number] = [50, -110, 60];

afterEach(() => {
  isWideGamut.value = false;
});

describe('what the screen is told to show', () => {
  test('what sRGB holds is #rrggbb on every screen', () => {
    for (const wide of [false, true]) {
      isWideGamut.value = wide;
      expect(cssColourOf(labOfHex('#6b4a2f'))).toBe('#6b4a2f');
      expect(isGamutMapped(cssColourOf(labOfHex('#6b4a2f')))).toBe(false);
    }
  });

  test('the red of Display P3 is itself on a wide screen, and marked as the nearest on another', () => {
    expect(isGamutMapped(cssColourOf(P3_RED))).toBe(true);
    isWideGamut.value = true;
    expect(cssColourOf(P3_RED)).toMatch(/^color\(display-p3 (1\.0000|0\.999\d) 0\.0\d+ 0\.0\d+\)$/);
    expect(isGamutMapped(cssColourOf(P3_RED))).toBe(false);
  });

  test('what no screen shows is marked on all', () => {
    for (const wide of [false, true]) {
      isWideGamut.value = wide;
      expect(isGamutMapped(cssColourOf(BEYOND_P3))).toBe(true);
    }
  });
});

describe('soft edges between colours of different screens', () => {
  test('of two colours of sRGB they stay in sRGB', () => {
    expect(blendLight('#000000', '#ffffff', 0.5)).toBe('#bcbcbc');
    expect(blendLight('rgb(0 0 0 / 1)', '#ffffff', 0)).toBe('#000000');
  });

  test('with a wide one they are wide, and white stays white', () => {
    expect(blendLight('#ffffff', 'color(display-p3 1 0 0)', 0)).toBe(
      'color(display-p3 1.0000 1.0000 1.0000)',
    );
    expect(blendLight('#000000', 'color(display-p3 1 0 0)', 1)).toBe(
      'color(display-p3 1.0000 0.0000 0.0000)',
    );
  });

  test('brightness is told of all of them', () => {
    expect(relativeLuminance('rgb(255 255 255 / 1)')).toBeCloseTo(1, 6);
    expect(relativeLuminance('color(display-p3 1.0000 1.0000 1.0000)')).toBeCloseTo(1, 3);
  });
});
