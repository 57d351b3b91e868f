import {
  converter,
  formatHex,
  modeLab65,
  modeOklab,
  modeOklch,
  modeP3,
  modeRgb,
  modeXyz65,
  toGamut,
  useMode,
} from 'culori/fn';
import type { Lab } from './lab.ts';
import { inP3, inSrgb, type RgbSpace } from './rgb.ts';

// What conversions and gamut mapping between these need; the whole library would be three times as large.
for (const mode of [modeRgb, modeP3, modeXyz65, modeLab65, modeOklab, modeOklch])
  useMode(mode as typeof modeRgb);

/**
 * Gamut mapping of CSS Color Module Level 4, section 13: OKLCh chroma is lowered while lightness and hue
 * stay, until clipping the rest makes a difference under 0.02 in OKLab.
 */
const INTO = {
  srgb: toGamut('rgb', 'oklch'),
  'display-p3': toGamut('p3', 'oklch'),
} as const;

const TO_RGB = { srgb: converter('rgb'), 'display-p3': converter('p3') } as const;

const mapped = (lab: Lab, space: RgbSpace) => {
  if (!lab.every(Number.isFinite)) throw new RangeError('a colour is three finite numbers');
  const [l, a, b] = lab;
  const colour = { mode: 'lab65', l, a, b } as const;
  // Rounding puts a pure primary 1e-9 outside: it is shown as it is, not mapped.
  if (space === 'srgb' && inSrgb(lab)) return TO_RGB.srgb(colour);
  if (space === 'display-p3' && inP3(lab)) return TO_RGB['display-p3'](colour);
  return INTO[space](colour);
};

const clamped = (v: number) => Math.min(1, Math.max(0, v));

/**
 * Encoded RGB, 0…1, that a screen of a space shows for a colour (CIELAB, D65), brought into its gamut.
 * Lighter than white is white, darker than black is black.
 * @throws RangeError if a number is not finite
 */
export function gamutMappedRgb(
  lab: Lab,
  space: RgbSpace,
): readonly [red: number, green: number, blue: number] {
  const { r, g, b } = mapped(lab, space);
  return [clamped(r), clamped(g), clamped(b)];
}

/** #rrggbb that an sRGB screen shows for a colour (CIELAB, D65). @throws RangeError as {@link gamutMappedRgb} */
export const hexOf = (lab: Lab): string => formatHex(mapped(lab, 'srgb'));

const toLab = converter('lab65');

/** CIELAB (D65) of #rrggbb. @throws RangeError if it is not six hexadecimal digits after an optional # */
export function labOfHex(hex: string): Lab {
  if (!/^#?[0-9a-f]{6}$/i.test(hex)) throw new RangeError(`${hex} is not a colour like #a1b2c3`);
  const { l, a, b } = toLab(hex.startsWith('#') ? hex : `#${hex}`)!;
  return [l, a, b];
}
