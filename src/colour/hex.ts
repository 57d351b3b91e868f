import { bisect } from '../bisection.ts';
import type { Lab } from './lab.ts';
import { linearOfOklab, oklabOfLab, oklabOfLinear } from './oklab.ts';
import { encode, linearBetween, type RgbSpace } from './rgb.ts';

/**
 * Just noticeable difference in OKLab, the largest clipping error allowed. Without it a blue would
 * lose half its chroma, because the sRGB boundary is concave at a fixed hue.
 * @see CSS Color Module Level 4, section 13: the limit 0.02
 */
const UNNOTICED = 0.02;
const HALVINGS = 20;

/**
 * Encoded RGB (0…1) of a colour (CIELAB, D65), gamut-mapped to an RGB space. Chroma is reduced at
 * constant OKLab lightness and hue until clipping changes the colour by less than
 * {@link UNNOTICED}. OKLab L of 1 or more gives white, of 0 or less black.
 * @throws RangeError when a number is not finite
 */
export function shownIn(
  lab: Lab,
  space: RgbSpace,
): readonly [red: number, green: number, blue: number] {
  if (!lab.every(Number.isFinite)) throw new RangeError('a colour is three finite numbers');
  const [L, a, b] = oklabOfLab(lab);
  if (L >= 1) return [1, 1, 1];
  if (L <= 0) return [0, 0, 0];
  const rgb = new Float64Array(3);
  const shown = new Float64Array(3);
  const isWide = space !== 'srgb';
  const into = (from: RgbSpace, to: RgbSpace, out: Float64Array) =>
    linearBetween(from, to, out[0]!, out[1]!, out[2]!, out);
  /**
   * Sets `rgb` to the clipped colour at this share of the chroma; true if the error is
   * unnoticeable.
   */
  const fits = (share: number): boolean => {
    linearOfOklab(L, a * share, b * share, rgb);
    if (isWide) into('srgb', space, rgb);
    rgb.forEach((v, i) => {
      rgb[i] = Math.min(1, Math.max(0, v));
    });
    shown.set(rgb);
    if (isWide) into(space, 'srgb', shown);
    oklabOfLinear(shown[0]!, shown[1]!, shown[2]!, shown);
    const lost = Math.hypot(shown[0]! - L, shown[1]! - a * share, shown[2]! - b * share);
    return lost < UNNOTICED;
  };
  if (!fits(1)) {
    const [share] = bisect(0, 1, fits, HALVINGS);
    fits(share);
  }
  return [encode(rgb[0]!), encode(rgb[1]!), encode(rgb[2]!)];
}

/** #rrggbb of a colour (CIELAB, D65), gamut-mapped to sRGB: {@link shownIn} in 8 bits. */
export const hexOf = (lab: Lab): string => `#${shownIn(lab, 'srgb').map(byte).join('')}`;

const byte = (value: number): string =>
  Math.round(255 * value)
    .toString(16)
    .padStart(2, '0');
