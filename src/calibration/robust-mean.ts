import { labF } from '../colour/lab.ts';
import type { CardPhotograph } from './card-photograph.ts';
import { linearTable } from './luminance-plane.ts';

/** Linear RGB. */
export type Rgb = readonly [r: number, g: number, b: number];

/** Robust mean colour of one patch of pixels. */
export interface RobustColour {
  /** Mean of the inliers, linear 0…1. */
  readonly rgb: Rgb;
  /** Number of sampled pixels. */
  readonly pixels: number;
  /** Share of inliers; outliers are gloss, dust or another paint. */
  readonly kept: number;
  /** Share of pixels with a channel at the top of its range. */
  readonly clipped: number;
  /** Robust standard deviation of the inliers, in CIELAB's f(t) (0.01 is about one L*). */
  readonly spread: number;
}

/** Encoded values from this share of the range up count as clipped. */
const CLIPPED = 0.985;
/** Inliers are within this many robust standard deviations of the median. */
const INLIER_DEVIATIONS = 2.8;
/** Noise of an 8-bit photograph in CIELAB's f(t): smaller deviations are always inliers. */
const NOISE_FLOOR = 0.012;

/**
 * Robust mean colour of a patch. Pixels far from the median of any channel (in median absolute
 * deviations of CIELAB's f(t), where noise is uniform) are rejected as gloss or dust; the others
 * are averaged in linear light.
 *
 * @param points in pixels of the photograph
 * @returns null if a point is outside the photograph or no pixel is left
 */
export function robustMeanColour(
  pixels: CardPhotograph,
  points: readonly (readonly [x: number, y: number])[],
): RobustColour | null {
  const { width, height, data } = pixels;
  const light = linearTable(pixels);
  const top = CLIPPED * (data instanceof Uint16Array ? 65535 : 255);
  const n = points.length;
  const planes = [new Float64Array(n), new Float64Array(n), new Float64Array(n)] as const;
  let clipped = 0;
  for (const [i, [px, py]] of points.entries()) {
    const [x, y] = [Math.floor(px), Math.floor(py)];
    if (!(x >= 0 && y >= 0 && x < width && y < height)) return null;
    const at = (y * width + x) * 4;
    let high = false;
    for (let c = 0; c < 3; c++) {
      const value = data[at + c]!;
      planes[c as 0 | 1 | 2][i] = light[value]!;
      high ||= value >= top;
    }
    if (high) clipped++;
  }
  const rooted = planes.map((plane) => plane.map(labF));
  let keep = new Uint8Array(n).fill(1);
  let spread = 0;
  for (let pass = 0; pass < 3; pass++) {
    const limits = rooted.map((plane) => {
      const kept = plane.filter((_, i) => keep[i] === 1);
      const middle = median(kept);
      const deviation = 1.4826 * median(kept.map((v) => Math.abs(v - middle)));
      return { middle, deviation };
    });
    spread = Math.max(...limits.map(({ deviation }) => deviation));
    keep = keep.map((_, i) =>
      limits.every(
        ({ middle, deviation }, c) =>
          Math.abs(rooted[c]![i]! - middle) <= Math.max(INLIER_DEVIATIONS * deviation, NOISE_FLOOR),
      )
        ? 1
        : 0,
    );
  }
  const kept = keep.reduce((sum, v) => sum + v, 0);
  if (kept === 0) return null;
  const mean = (plane: Float64Array) =>
    plane.reduce((sum, v, i) => sum + (keep[i] === 1 ? v : 0), 0) / kept;
  return {
    rgb: [mean(planes[0]), mean(planes[1]), mean(planes[2])],
    pixels: n,
    kept: kept / n,
    clipped: clipped / n,
    spread,
  };
}

/** Median; NaN for an empty list. The input is not changed. */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  if (sorted.length === 0) return Number.NaN;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
