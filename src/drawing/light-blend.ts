import { linearBetween, type RgbSpace } from '../colour/rgb.ts';

/**
 * Additive mixing of two display colours, for soft edges between neighbouring colours in a drawing.
 * This is not a prediction of paint: the colours are final, as the screen shows them. Transfer function of sRGB, which Display P3 shares.
 */
const toLight = (value: number) =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
const toValue = (light: number) => {
  const c = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.min(1, Math.max(0, c));
};

/** Linear RGB, 0…1. */
interface LinearColour {
  readonly space: RgbSpace;
  readonly rgb: Float64Array;
}

/** Cache, because painting one cloth reads the same few colours very often. */
const lights = new Map<string, LinearColour>();
const MOST_LIGHTS = 500;

/** Linear light of a CSS colour; mid-grey for text that is not a colour. */
function lightOf(shown: string): LinearColour {
  const known = lights.get(shown);
  if (known) return known;
  if (lights.size >= MOST_LIGHTS) lights.clear();
  const light = readLight(shown);
  lights.set(shown, light);
  return light;
}

function readLight(shown: string): LinearColour {
  const space = shown.startsWith('color(display-p3') ? 'display-p3' : 'srgb';
  return { space, rgb: Float64Array.from(values(shown), toLight) };
}

function values(shown: string): readonly number[] {
  if (/^#[0-9a-f]{6}$/i.test(shown)) {
    const n = Number.parseInt(shown.slice(1), 16);
    return [(n >> 16) & 255, (n >> 8) & 255, n & 255].map((v) => v / 255);
  }
  const found = /^(rgb\(|color\(display-p3 )([\d.]+) ([\d.]+) ([\d.]+)/.exec(shown);
  if (!found) return [128, 128, 128].map((v) => v / 255);
  return found.slice(2, 5).map((v) => Number(v) / (found[1] === 'rgb(' ? 255 : 1));
}

/** Converts linear light to another space; returns the same array when it is already there. */
function within({ space, rgb }: LinearColour, to: RgbSpace): Float64Array {
  return space === to
    ? rgb
    : linearBetween(space, to, rgb[0]!, rgb[1]!, rgb[2]!, new Float64Array(3));
}

/**
 * Mixes two CSS colours in linear light. Text that is not a colour counts as mid-grey.
 *
 * @param share of `to`, 0…1
 * @returns `#rrggbb`, or `color(display-p3 …)` if either colour is in that space
 */
export function blendLight(from: string, to: string, share: number): string {
  const lights = [lightOf(from), lightOf(to)] as const;
  const isWide = lights.some(({ space }) => space === 'display-p3');
  const space = isWide ? 'display-p3' : 'srgb';
  const [a, b] = [within(lights[0], space), within(lights[1], space)];
  const mixed = [0, 1, 2].map((i) => toValue((a[i] ?? 0) * (1 - share) + (b[i] ?? 0) * share));
  return isWide
    ? `color(display-p3 ${mixed.map((v) => v.toFixed(4)).join(' ')})`
    : `#${mixed
        .map((v) =>
          Math.round(255 * v)
            .toString(16)
            .padStart(2, '0'),
        )
        .join('')}`;
}

/** Relative luminance 0…1 of a CSS colour (sRGB weights). */
export function relativeLuminance(shown: string): number {
  const [r = 0, g = 0, b = 0] = within(lightOf(shown), 'srgb');
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Black or white for text on this colour, whichever contrasts more. */
export const textColourOn = (shown: string) =>
  relativeLuminance(shown) > 0.18 ? '#161616' : '#f4f4f4';
