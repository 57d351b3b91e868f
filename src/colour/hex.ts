import type { Lab } from './lab.ts';
import { linearOfOklab, oklabOfLab } from './oklab.ts';
import { encode, inRange } from './rgb.ts';

const HALVINGS = 24;

/**
 * #rrggbb that an sRGB screen shows for a colour (CIELAB, D65). What it cannot show is brought in by
 * lowering chroma alone: OKLab lightness and hue stay. Lighter than white is white, darker than
 * black is black.
 * @throws RangeError when a number is not finite
 */
export function hexOf(lab: Lab): string {
  if (!lab.every(Number.isFinite)) throw new RangeError('a colour is three finite numbers');
  const [L, a, b] = oklabOfLab(lab);
  if (L >= 1) return '#ffffff';
  if (L <= 0) return '#000000';
  const rgb = new Float64Array(3);
  const at = (share: number) => linearOfOklab(L, a * share, b * share, rgb).every(inRange);
  if (!at(1)) {
    let shown = 0;
    let lost = 1;
    for (let i = 0; i < HALVINGS; i++) {
      const half = (shown + lost) / 2;
      if (at(half)) shown = half;
      else lost = half;
    }
    at(shown);
  }
  return `#${Array.from(rgb, byte).join('')}`;
}

const byte = (linear: number): string =>
  Math.round(255 * Math.min(1, Math.max(0, encode(linear))))
    .toString(16)
    .padStart(2, '0');
