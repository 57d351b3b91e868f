import type { Lab } from '../colour/lab.ts';
import { DECODE_8BIT, decode, labOfLinear } from '../colour/rgb.ts';
import { fail, ok, type Result } from '../result.ts';
import { toLinearSrgb } from './downsample.ts';
import type { Pixels } from './pixels.ts';

/** A small square patch of a photograph, averaged in linear light. */
export interface Spot {
  /** Linear sRGB of the mean; outside 0…1 where the source gamut is wider. */
  readonly linear: readonly [number, number, number];
  readonly lab: Lab;
  /** Side of the requested patch and its top left corner, in pixels. */
  readonly side: number;
  readonly left: number;
  readonly top: number;
  /** Share of the patch's pixels with a channel at its maximum, 0…1. */
  readonly clipped: number;
}

/** Why a patch has no colour. */
export type SpotFault =
  | { readonly code: 'outside' }
  /** No opaque pixel in the patch. */
  | { readonly code: 'see-through' };

/** Default side of a patch in pixels: a hundredth of the shorter edge, at least 5, odd. */
const spotSide = (width: number, height: number): number =>
  Math.max(5, Math.round(Math.min(width, height) / 100)) | 1;

/**
 * Mean of a small patch. A single pixel would be spoiled by grain or by a browser's readback noise.
 * @param x, y centre of the patch, fractions 0…1 of width and height
 * @param side in pixels; clipped at the photograph's edge
 * @returns the patch's colour, or a fault outside the photograph or where it is transparent
 */
export function sampleSpot(
  pixels: Pixels,
  x: number,
  y: number,
  side = spotSide(pixels.width, pixels.height),
): Result<Spot, SpotFault> {
  const { width, height, data } = pixels;
  if (!(x >= 0 && x <= 1 && y >= 0 && y <= 1)) return fail({ code: 'outside' });
  const left = Math.max(0, Math.min(width - 1, Math.floor(x * width)) - (side >> 1));
  const top = Math.max(0, Math.min(height - 1, Math.floor(y * height)) - (side >> 1));
  const right = Math.min(width, left + side);
  const bottom = Math.min(height, top + side);
  const deep = data instanceof Uint16Array;
  const most = deep ? 65535 : 255;
  const light = (v: number) => (deep ? decode(v / 65535) : DECODE_8BIT[v]!);
  const sum = [0, 0, 0];
  let seen = 0;
  let clipped = 0;
  for (let row = top; row < bottom; row++)
    for (let column = left; column < right; column++) {
      const at = (row * width + column) * 4;
      if (data[at + 3]! * 2 < most) continue;
      seen++;
      let end = false;
      for (let c = 0; c < 3; c++) {
        const v = data[at + c]!;
        sum[c]! += light(v);
        end ||= v >= most;
      }
      if (end) clipped++;
    }
  if (seen === 0) return fail({ code: 'see-through' });
  let [r, g, b] = sum.map((v) => v / seen) as [number, number, number];
  const matrix = toLinearSrgb(pixels.space);
  if (matrix)
    [r, g, b] = matrix.map((m) => m[0] * r + m[1] * g + m[2] * b) as [number, number, number];
  const lab = labOfLinear(r, g, b);
  return ok({ linear: [r, g, b], lab, side, left, top, clipped: clipped / seen });
}
