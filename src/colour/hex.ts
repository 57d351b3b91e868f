import type { Lab } from './lab.ts';
import { linearOfOklab, oklabOfLab, oklabOfLinear } from './oklab.ts';
import { encode } from './rgb.ts';

/**
 * A distance in OKLab that nobody notices. Cutting off what is left over is allowed so far: at a fixed
 * hue the edge of sRGB is hollow, and a blue kept strictly on its line would lose half its chroma.
 * @see CSS Color Module Level 4, section 13: the limit 0.02
 */
const UNNOTICED = 0.02;
const HALVINGS = 20;

/**
 * #rrggbb that an sRGB screen shows for a colour (CIELAB, D65). What it cannot show is brought in by
 * lowering chroma while OKLab lightness and hue stay, to within {@link UNNOTICED}. Lighter than white
 * is white, darker than black is black.
 * @throws RangeError when a number is not finite
 */
export function hexOf(lab: Lab): string {
  if (!lab.every(Number.isFinite)) throw new RangeError('a colour is three finite numbers');
  const [L, a, b] = oklabOfLab(lab);
  if (L >= 1) return '#ffffff';
  if (L <= 0) return '#000000';
  const rgb = new Float64Array(3);
  const shown = new Float64Array(3);
  /** Leaves in `rgb` what the screen shows at a share of the chroma; true when nobody notices a loss. */
  const fits = (share: number): boolean => {
    linearOfOklab(L, a * share, b * share, rgb);
    rgb.forEach((v, i) => {
      rgb[i] = Math.min(1, Math.max(0, v));
    });
    oklabOfLinear(rgb[0]!, rgb[1]!, rgb[2]!, shown);
    const lost = Math.hypot(shown[0]! - L, shown[1]! - a * share, shown[2]! - b * share);
    return lost < UNNOTICED;
  };
  if (!fits(1)) {
    let low = 0;
    let high = 1;
    for (let i = 0; i < HALVINGS; i++) {
      const half = (low + high) / 2;
      if (fits(half)) low = half;
      else high = half;
    }
    fits(low);
  }
  return `#${Array.from(rgb, byte).join('')}`;
}

const byte = (linear: number): string =>
  Math.round(255 * encode(linear))
    .toString(16)
    .padStart(2, '0');
