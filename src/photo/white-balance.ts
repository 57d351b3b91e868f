import { rgbAdaptationMatrix } from '../colour/adaptation.ts';
import { diagonal, type Matrix, product } from '../colour/matrix.ts';
import { ILLUMINANT_A, type XYZ } from '../colour/observer.ts';
import { RGB_WHITE, TO_XYZ } from '../colour/rgb.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Pixels } from './pixels.ts';
import { type Spot, type SpotFault, sampleSpot } from './spot-sample.ts';

/** White balance of a photograph: a matrix for linear sRGB, and where it comes from. */
export interface WhiteBalance {
  readonly matrix: Matrix;
  readonly by:
    | { readonly kind: 'spot'; readonly spot: Spot }
    | { readonly kind: 'light'; readonly light: NamedLight };
  /** Factor applied to the exposure; 1 if unchanged. */
  readonly exposure: number;
}

/** Why a spot cannot set the white balance. */
export type NeutralFault =
  | SpotFault
  /** A channel is at its maximum: the colour of the light is lost there. */
  | { readonly code: 'clipped' }
  | { readonly code: 'too-dark' }
  /** Too saturated: no common light makes a neutral surface look like this. */
  | { readonly code: 'coloured' };

/** Largest clipped share of a patch, and least luminance (Y, 0…1) of a neutral spot. */
const MAX_CLIPPED_SHARE = 0.02;
const MIN_LUMINANCE = 0.01;

/**
 * White balance from a spot that was white or neutral grey: Bradford adaptation in linear light
 * that maps the mean of a small patch to grey of the same luminance.
 * @param x, y position of the spot, fractions 0…1 of width and height
 * @param grey reflectance of the card, 0…1 (0.18 for a grey card); also sets the exposure
 * @param side of the patch in pixels; default: {@link spotSide}
 */
export function whiteBalanceAt(
  pixels: Pixels,
  x: number,
  y: number,
  grey?: number,
  side?: number,
): Result<WhiteBalance, NeutralFault> {
  const found = side === undefined ? sampleSpot(pixels, x, y) : sampleSpot(pixels, x, y, side);
  if (!found.ok) return found;
  const spot = found.value;
  if (spot.clipped > MAX_CLIPPED_SHARE) return fail({ code: 'clipped' });
  const [r, g, b] = spot.linear;
  const row = (i: number) => {
    const m = TO_XYZ.srgb[i]!;
    return m[0] * r + m[1] * g + m[2] * b;
  };
  const xyz: XYZ = [row(0), row(1), row(2)];
  if (xyz[1] < 100 * MIN_LUMINANCE) return fail({ code: 'too-dark' });
  if (!couldBeLight(xyz)) return fail({ code: 'coloured' });
  const adapted = rgbAdaptationMatrix(xyz, RGB_WHITE);
  const exposure = grey === undefined ? 1 : (100 * grey) / xyz[1];
  const matrix =
    exposure === 1 ? adapted : product(diagonal(exposure, exposure, exposure), adapted);
  return ok({ matrix, by: { kind: 'spot', spot }, exposure });
}

/**
 * Whether XYZ could be a light: chromaticity bounds from candlelight to open shade, with a margin.
 * No studio light lies outside.
 */
function couldBeLight([X, Y, Z]: XYZ): boolean {
  const sum = X + Y + Z;
  const x = X / sum;
  const y = Y / sum;
  return x > 0.22 && x < 0.6 && y > 0.22 && y < 0.46 && Z > 0;
}

/** Lights that the painter can choose by name. */
export const NAMED_LIGHTS = ['open shade', 'overcast', 'low sun', 'lamp'] as const;
export type NamedLight = (typeof NAMED_LIGHTS)[number];

/**
 * White point of CIE daylight, 4000 to 25000 K, scaled to Y = 100.
 * @throws RangeError outside that range
 * @see CIE 015:2018, 4.1.2: the daylight locus
 */
export function daylightWhite(kelvin: number): XYZ {
  if (!(kelvin >= 4000 && kelvin <= 25000))
    throw new RangeError(`daylight is known from 4000 to 25000 K, not at ${kelvin}`);
  const t = 1000 / kelvin;
  const x =
    kelvin <= 7000
      ? 0.244063 + 0.09911 * t + 2.9678 * t ** 2 - 4.607 * t ** 3
      : 0.23704 + 0.24748 * t + 1.9018 * t ** 2 - 2.0064 * t ** 3;
  const y = -3 * x * x + 2.87 * x - 0.275;
  return [(100 * x) / y, 100, (100 * (1 - x - y)) / y];
}

/** Colour temperatures by common photographic practice; lamp-light is CIE A. */
const WHITES: Record<NamedLight, XYZ> = {
  'open shade': daylightWhite(8000),
  overcast: daylightWhite(7000),
  'low sun': daylightWhite(4000),
  lamp: ILLUMINANT_A.white,
};

/** White balance from a named light, for a camera set to daylight. */
export const whiteBalanceForLight = (light: NamedLight): WhiteBalance => ({
  matrix: rgbAdaptationMatrix(WHITES[light], RGB_WHITE),
  by: { kind: 'light', light },
  exposure: 1,
});
