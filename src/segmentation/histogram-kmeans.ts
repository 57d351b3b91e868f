import { forEachChunk } from '../chunked.ts';
import type { SmoothedImage } from './smoothing.ts';

/** Weight of lightness against a and b in clustering: shading varies within one object. */
export const LIGHTNESS = 0.4;

/** Occupied bins of a grid that spans the work image's own range of OKLab. */
export interface Histogram {
  readonly bins: number;
  /** Weight and weighted mean of each occupied bin, in order of first occurrence. */
  readonly weight: Float64Array;
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** Number of cells in each bin. */
  readonly cells: Float64Array;
  /** Bin of each cell; −1 if excluded. */
  readonly ofCell: Int32Array;
}

/** Most bins of the grid, occupied or not. */
const GRID = 220_000;

/**
 * Weighted histogram of a work image. Bins are as fine as the scene's range allows, so a misty
 * scene is resolved as finely as a sunny one. Clustering the weighted bins approximates clustering
 * the cells.
 * @param seen pixel count of each cell; 0 excludes it
 */
export function colourHistogram(image: SmoothedImage, seen: Float32Array): Histogram {
  const cells = seen.length;
  const lowest = new Float64Array(3).fill(Infinity);
  const highest = new Float64Array(3).fill(-Infinity);
  forEachChunk(cells, (from, to) => widen(image, seen, from, to, lowest, highest));
  let width = 0.005;
  const size = () => lowest.map((low, i) => Math.floor((highest[i]! - low) / width) + 1);
  while (size().reduce((all, n) => all * n) > GRID) width *= 1.1;
  const binning = new HistogramBuilder(image, seen, lowest, 1 / width, size());
  forEachChunk(cells, (from, to) => binning.add(from, to));
  return binning.toHistogram();
}

/** Extends the ranges of L, a and b over the included cells `from` … `to` − 1. */
function widen(
  { L, a, b }: SmoothedImage,
  seen: Float32Array,
  from: number,
  to: number,
  lowest: Float64Array,
  highest: Float64Array,
): void {
  // Read one by one: destructuring the array would box the numbers, at four times the cost.
  let lowL = lowest[0]!;
  let lowA = lowest[1]!;
  let lowB = lowest[2]!;
  let highL = highest[0]!;
  let highA = highest[1]!;
  let highB = highest[2]!;
  for (let i = from; i < to; i++) {
    if (seen[i] === 0) continue;
    const l = L[i]!;
    const u = a[i]!;
    const v = b[i]!;
    if (l < lowL) lowL = l;
    if (l > highL) highL = l;
    if (u < lowA) lowA = u;
    if (u > highA) highA = u;
    if (v < lowB) lowB = v;
    if (v > highB) highB = v;
  }
  lowest.set([lowL, lowA, lowB]);
  highest.set([highL, highA, highB]);
}

/** Sums per bin. */
const PER_BIN = 5;

/** Assigns cells to the bins of a grid. */
class HistogramBuilder {
  private readonly image: SmoothedImage;
  private readonly seen: Float32Array;
  /** Lower ends of L, a and b. */
  private readonly low: Float64Array;
  private readonly per: number;
  private readonly across: number;
  private readonly deep: number;
  /** Bin of each grid cell plus one; 0 if unoccupied. */
  private readonly binAt: Int32Array;
  private readonly ofCell: Int32Array;
  /** Per bin: weight, weighted sums of L, a, b, and number of cells. */
  private sums = new Float64Array(PER_BIN * 4096);
  private bins = 0;

  constructor(
    image: SmoothedImage,
    seen: Float32Array,
    low: Float64Array,
    per: number,
    size: Float64Array,
  ) {
    this.image = image;
    this.seen = seen;
    this.low = low;
    this.per = per;
    this.across = size[1]!;
    this.deep = size[2]!;
    this.binAt = new Int32Array(size[0]! * size[1]! * size[2]!);
    this.ofCell = new Int32Array(seen.length);
  }

  add(from: number, to: number): void {
    const { seen, per, across, deep, binAt, ofCell } = this;
    const { L, a, b } = this.image;
    const L0 = this.low[0]!;
    const a0 = this.low[1]!;
    const b0 = this.low[2]!;
    for (let i = from; i < to; i++) {
      const w = seen[i]!;
      if (w === 0) {
        ofCell[i] = -1;
        continue;
      }
      const l = L[i]!;
      const u = a[i]!;
      const v = b[i]!;
      const key =
        ((((l - L0) * per) | 0) * across + (((u - a0) * per) | 0)) * deep + (((v - b0) * per) | 0);
      let bin = binAt[key]! - 1;
      if (bin < 0) {
        bin = this.bins++;
        binAt[key] = bin + 1;
        if (bin * PER_BIN === this.sums.length) this.grow();
      }
      ofCell[i] = bin;
      const { sums } = this;
      const at = bin * PER_BIN;
      sums[at]! += w;
      sums[at + 1]! += w * l;
      sums[at + 2]! += w * u;
      sums[at + 3]! += w * v;
      sums[at + 4]!++;
    }
  }

  private grow(): void {
    const larger = new Float64Array(this.sums.length * 2);
    larger.set(this.sums);
    this.sums = larger;
  }

  toHistogram(): Histogram {
    const { bins, sums, ofCell } = this;
    const weight = new Float64Array(bins);
    const L = new Float64Array(bins);
    const a = new Float64Array(bins);
    const b = new Float64Array(bins);
    const cells = new Float64Array(bins);
    for (let bin = 0, at = 0; bin < bins; bin++, at += PER_BIN) {
      const w = sums[at]!;
      weight[bin] = w;
      L[bin] = sums[at + 1]! / w;
      a[bin] = sums[at + 2]! / w;
      b[bin] = sums[at + 3]! / w;
      cells[bin] = sums[at + 4]!;
    }
    return { bins, weight, L, a, b, cells, ofCell };
  }
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
 * Weighted k-means of a histogram by Lloyd's algorithm, deterministic. The first seed is the
 * heaviest bin; each next one is the bin with the largest weight × squared distance to the seeds,
 * the lowest index on ties.
 * @param k most clusters, 1…255
 * @param lightness weight of L against a and b
 * @param passes most Lloyd iterations
 * @param start initial centres (L already scaled), instead of seeding
 */
export function weightedKMeans(
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
