import type { Histogram } from './histogram-kmeans.ts';
import type { MergeNodes } from './merge-cost.ts';
import { type Points, splitByVariance } from './variance-split.ts';

/**
 * Superpixels: the smallest clusters of a photograph's colours. Runs regroup them but never split
 * one.
 */
export interface Superpixels extends MergeNodes {
  /** Superpixel of each bin of the histogram. */
  readonly ofBin: Uint16Array;
}

/** Most superpixels of a photograph. */
const MAX_SUPERPIXELS = 384;

/**
 * Clusters the bins of a histogram into at most 384 superpixels.
 * @param lightness weight of L against a and b
 */
export function superpixelsOf(bins: Histogram, lightness: number): Superpixels {
  const { count, ofPoint: ofBin } = splitByVariance(
    clusteringSpace(bins, lightness),
    MAX_SUPERPIXELS,
  );
  const weight = new Float64Array(count);
  const cells = new Float64Array(count);
  const L = new Float64Array(count);
  const a = new Float64Array(count);
  const b = new Float64Array(count);
  for (let bin = 0; bin < ofBin.length; bin++) {
    const superpixel = ofBin[bin]!;
    const w = bins.weight[bin]!;
    weight[superpixel]! += w;
    cells[superpixel]! += bins.cells[bin]!;
    L[superpixel]! += w * bins.L[bin]!;
    a[superpixel]! += w * bins.a[bin]!;
    b[superpixel]! += w * bins.b[bin]!;
  }
  for (let superpixel = 0; superpixel < count; superpixel++) {
    L[superpixel]! /= weight[superpixel]!;
    a[superpixel]! /= weight[superpixel]!;
    b[superpixel]! /= weight[superpixel]!;
  }
  return { count, weight, cells, L, a, b, ofBin };
}

/** OKLab as a space for clustering, L scaled by `lightness`. */
export function clusteringSpace(
  { L, a, b, weight }: Pick<MergeNodes, 'L' | 'a' | 'b' | 'weight'>,
  lightness: number,
): Points {
  return { weight, x: L.map((v) => v * lightness), y: a, z: b };
}
