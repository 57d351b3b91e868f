import type { FlatImage } from '../photo/flat.ts';

/** Weight of lightness against a and b while clustering: light changes inside one thing. */
export const LIGHTNESS = 0.4;

/** Occupied cells of a grid over the work image's own range of OKLab. */
export interface Histogram {
  readonly bins: number;
  /** Weight and weighted mean of each occupied bin, in the order of the grid. */
  readonly weight: Float64Array;
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** Bin of each cell, −1 where nothing is looked at. */
  readonly ofCell: Int32Array;
}

/**
 * Weighted histogram of a work image. Bins are as wide as the scene allows, so a misty scene is
 * seen as finely as a sunny one. Clustering its bins equals clustering its cells.
 */
export function histogram(image: FlatImage, seen: Float32Array): Histogram {
  const { L, a, b } = image;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const planes = [L, a, b];
  for (let plane = 0; plane < 3; plane++) {
    const values = planes[plane]!;
    let least = Infinity;
    let most = -Infinity;
    for (let i = 0; i < values.length; i++) {
      if (seen[i] === 0) continue;
      const v = values[i]!;
      if (v < least) least = v;
      if (v > most) most = v;
    }
    low[plane] = least;
    high[plane] = most;
  }
  let width = 0.005;
  const size = (plane: number) => Math.floor((high[plane]! - low[plane]!) / width) + 1;
  while (size(0) * size(1) * size(2) > 220_000) width *= 1.1;
  const [nL, na, nb] = [size(0), size(1), size(2)] as [number, number, number];
  const index = new Int32Array(nL * na * nb);
  const ofCell = new Int32Array(L.length).fill(-1);
  const [L0, a0, b0] = low as [number, number, number];
  const per = 1 / width;
  for (let i = 0; i < L.length; i++) {
    if (seen[i] === 0) continue;
    const key =
      (Math.floor((L[i]! - L0) * per) * na + Math.floor((a[i]! - a0) * per)) * nb +
      Math.floor((b[i]! - b0) * per);
    ofCell[i] = key;
    index[key] = 1;
  }
  let bins = 0;
  for (let key = 0; key < index.length; key++) if (index[key]) index[key] = bins++;
  const weight = new Float64Array(bins);
  const sumL = new Float64Array(bins);
  const sumA = new Float64Array(bins);
  const sumB = new Float64Array(bins);
  for (let i = 0; i < L.length; i++) {
    if (ofCell[i] === -1) continue;
    const bin = index[ofCell[i]!]!;
    ofCell[i] = bin;
    const w = seen[i]!;
    weight[bin]! += w;
    sumL[bin]! += w * L[i]!;
    sumA[bin]! += w * a[i]!;
    sumB[bin]! += w * b[i]!;
  }
  for (let bin = 0; bin < bins; bin++) {
    sumL[bin]! /= weight[bin]!;
    sumA[bin]! /= weight[bin]!;
    sumB[bin]! /= weight[bin]!;
  }
  return { bins, weight, L: sumL, a: sumA, b: sumB, ofCell };
}

/** Clusters of a histogram: centres in OKLab, and the cluster of each bin. */
export interface Clusters {
  readonly count: number;
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly weight: Float64Array;
  readonly ofBin: Uint8Array;
}

/**
 * Weighted k-means of a histogram by Lloyd's steps, no random numbers: it starts at the heaviest
 * bin, then takes the bin with the largest weight × squared distance to those chosen, the lowest
 * on ties; an empty cluster is left out. Clustering bins with weights equals clustering pixels.
 * @param k         clusters at most, 1…255
 * @param lightness weight of L against a and b
 */
export function cluster(
  bins: Pick<Histogram, 'bins' | 'weight' | 'L' | 'a' | 'b'>,
  k: number,
  lightness = LIGHTNESS,
  passes = 10,
  start?: readonly (readonly [number, number, number])[],
): Clusters {
  const n = bins.bins;
  const { weight } = bins;
  const x = bins.L.map((v) => v * lightness);
  const { a: y, b: z } = bins;
  const far = new Float64Array(n).fill(Infinity);
  const cx: number[] = [];
  const cy: number[] = [];
  const cz: number[] = [];
  let next = 0;
  for (let i = 1; i < n; i++) if (weight[i]! > weight[next]!) next = i;
  for (const [sx, sy, sz] of start ?? []) {
    cx.push(sx);
    cy.push(sy);
    cz.push(sz);
  }
  while (!start && cx.length < k) {
    const [sx, sy, sz] = [x[next]!, y[next]!, z[next]!];
    cx.push(sx);
    cy.push(sy);
    cz.push(sz);
    let most = 0;
    for (let i = 0; i < n; i++) {
      const [dx, dy, dz] = [x[i]! - sx, y[i]! - sy, z[i]! - sz];
      const d = dx * dx + dy * dy + dz * dz;
      if (d < far[i]!) far[i] = d;
      const pull = far[i]! * weight[i]!;
      if (pull > most) {
        most = pull;
        next = i;
      }
    }
    if (most === 0) break;
  }
  const count = cx.length;
  const ofBin = new Uint8Array(n);
  const sums = new Float64Array(count * 4);
  for (let pass = 0; pass < passes; pass++) {
    let moved = pass === 0;
    sums.fill(0);
    for (let i = 0; i < n; i++) {
      let best = 0;
      let least = Infinity;
      const [px, py, pz] = [x[i]!, y[i]!, z[i]!];
      for (let c = 0; c < count; c++) {
        const dx = px - cx[c]!;
        const dy = py - cy[c]!;
        const dz = pz - cz[c]!;
        const d = dx * dx + dy * dy + dz * dz;
        if (d < least) {
          least = d;
          best = c;
        }
      }
      if (ofBin[i] !== best) {
        ofBin[i] = best;
        moved = true;
      }
      const w = weight[i]!;
      sums[best * 4]! += w;
      sums[best * 4 + 1]! += w * px;
      sums[best * 4 + 2]! += w * py;
      sums[best * 4 + 3]! += w * pz;
    }
    for (let c = 0; c < count; c++) {
      const w = sums[c * 4]!;
      if (w === 0) continue;
      cx[c] = sums[c * 4 + 1]! / w;
      cy[c] = sums[c * 4 + 2]! / w;
      cz[c] = sums[c * 4 + 3]! / w;
    }
    if (!moved) break;
  }
  const weights = new Float64Array(count);
  for (let i = 0; i < n; i++) weights[ofBin[i]!]! += weight[i]!;
  return {
    count,
    L: Float64Array.from(cx, (v) => v / lightness),
    a: Float64Array.from(cy),
    b: Float64Array.from(cz),
    weight: weights,
    ofBin,
  };
}
