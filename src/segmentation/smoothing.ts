import { type DownsampledImage, emptyPlanes } from '../photo/downsample.ts';

/**
 * OKLab planes of a work image after edge-preserving smoothing: without grain and without mixed
 * rims.
 */
export interface SmoothedImage {
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/**
 * Edge-preserving smoothing. Each cell takes the mean of the least varying of five 3 × 3 windows:
 * its own and the four centred two cells away diagonally. This averages grain out, and a cell on a
 * boundary takes the colour of one side.
 * @returns new planes of width × height cells; excluded cells stay 0
 * @see M. Kuwahara et al., 1976, for choosing windows by variance (reference from memory)
 */
export function smoothImage(work: DownsampledImage): SmoothedImage {
  const { width, height, pixelCounts: seen } = work;
  const out: SmoothedImage = emptyPlanes(width * height);
  // Keep only five rows of windows: touching fresh memory costs more than the sums.
  const windows = new Windows(work);
  for (let next = 0; next < height + 2; next++) {
    if (next < height) windows.next();
    const y = next - 2;
    if (y < 0) continue;
    const here = windows.at(y);
    const up = y >= 2 ? windows.at(y - 2) : here;
    const down = y + 2 < height ? windows.at(next) : here;
    chooseRow(windows, seen, y * width, width, [here, up, down], out);
  }
  return out;
}

/**
 * Chooses a window for every cell of one row; `here`, `up` and `down` are offsets of rows of
 * windows.
 */
function chooseRow(
  { L, a, b, spread, own }: Windows,
  seen: Float32Array,
  row: number,
  width: number,
  [here, up, down]: readonly [here: number, up: number, down: number],
  out: SmoothedImage,
): void {
  const places = new Int32Array(5);
  for (let x = 0, i = row; x < width; x++, i++) {
    if (seen[i] === 0) continue;
    const left = x >= 2 ? x - 2 : x;
    const right = x + 2 < width ? x + 2 : x;
    places[0] = here + x;
    places[1] = up + left;
    places[2] = up + right;
    places[3] = down + left;
    places[4] = down + right;
    // The winner is unpredictable: branch-free code takes a third of the time.
    const least = lower(
      own[places[0]!]! & RANK,
      lower(
        lower((spread[places[1]!]! & RANK) | 1, (spread[places[2]!]! & RANK) | 2),
        lower((spread[places[3]!]! & RANK) | 3, (spread[places[4]!]! & RANK) | 4),
      ),
    );
    const at = places[least & ~RANK]!;
    out.L[i] = L[at]!;
    out.a[i] = a[at]!;
    out.b[i] = b[at]!;
  }
}

/**
 * Masks all but the low three bits of a variance, which hold the window's number: 2⁻²⁰ of its
 * value.
 */
const RANK = ~7;

/** Minimum of two integers 0…2³¹ − 1, without a branch. */
function lower(p: number, q: number): number {
  const d = q - p;
  return p + (d & (d >> 31));
}

/**
 * Means and variances of the 3 × 3 windows over the included cells of a work image. A ring buffer
 * keeps the last five rows.
 */
class Windows {
  /** Mean of the window around each cell. */
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** Variance of that window as raw float bits: non-negative floats sort like their bits. */
  readonly spread: Int32Array;
  /**
   * The same for the central window, times 1.05, so that it loses near ties; otherwise rims would
   * stay mixed.
   */
  readonly own: Int32Array;
  private readonly spreads: Float32Array;
  private readonly owns: Float32Array;
  private readonly work: DownsampledImage;
  /** Sums over three columns for each of three rows: L, a, b, sum of squares, count. */
  private readonly ring: readonly Float64Array[];
  private y = 0;

  constructor(work: DownsampledImage) {
    this.work = work;
    const { width } = work;
    const cells = 5 * width;
    ({ L: this.L, a: this.a, b: this.b } = emptyPlanes(cells));
    this.spreads = new Float32Array(cells);
    this.owns = new Float32Array(cells);
    this.spread = new Int32Array(this.spreads.buffer);
    this.own = new Int32Array(this.owns.buffer);
    this.ring = [0, 1, 2].map(() => new Float64Array(width * 5));
    sumColumns(work, 0, this.ring[0]!);
  }

  /** Offset of row y in the ring buffer. */
  at(y: number): number {
    return (y % 5) * this.work.width;
  }

  /** Computes the next row of windows. */
  next(): void {
    const { L, a, b, spreads, owns } = this;
    const { width, height, pixelCounts: seen } = this.work;
    const y = this.y++;
    const below = this.ring[(y + 1) % 3]!;
    if (y + 1 < height) sumColumns(this.work, y + 1, below);
    else below.fill(0);
    const above = this.ring[(y + 2) % 3]!;
    const here = this.ring[y % 3]!;
    let n = 0;
    let per = 0;
    let to = this.at(y);
    for (let at = 0, cell = y * width; at < width * 5; cell++, at += 5, to++) {
      if (seen[cell] === 0) {
        spreads[to] = Infinity;
        continue;
      }
      const count = above[at + 4]! + here[at + 4]! + below[at + 4]!;
      // The count is nearly always nine: skip the division then.
      if (count !== n) {
        n = count;
        per = 1 / n;
      }
      const meanL = (above[at]! + here[at]! + below[at]!) * per;
      const meanA = (above[at + 1]! + here[at + 1]! + below[at + 1]!) * per;
      const meanB = (above[at + 2]! + here[at + 2]! + below[at + 2]!) * per;
      const squares = (above[at + 3]! + here[at + 3]! + below[at + 3]!) * per;
      L[to] = meanL;
      a[to] = meanA;
      b[to] = meanB;
      const varies = Math.max(0, squares - (meanL * meanL + meanA * meanA + meanB * meanB));
      spreads[to] = varies;
      owns[to] = varies * 1.05;
    }
  }
}

/**
 * Sums of each cell of row y with its left and right neighbours (L, a, b, squares, count); excluded
 * cells count as 0.
 * @param out 5 × width values; overwritten
 */
function sumColumns(work: DownsampledImage, y: number, out: Float64Array): void {
  const { width, L, a, b, pixelCounts: seen } = work;
  const row = y * width;
  let L0 = 0;
  let a0 = 0;
  let b0 = 0;
  let s0 = 0;
  let n0 = 0;
  let L1 = L[row]!;
  let a1 = a[row]!;
  let b1 = b[row]!;
  let s1 = L1 * L1 + a1 * a1 + b1 * b1;
  let n1 = seen[row] ? 1 : 0;
  const last = (width - 1) * 5;
  // Excluded cells hold zeros.
  for (let at = 0, cell = row + 1; at < last; at += 5, cell++) {
    const L2 = L[cell]!;
    const a2 = a[cell]!;
    const b2 = b[cell]!;
    const s2 = L2 * L2 + a2 * a2 + b2 * b2;
    const n2 = seen[cell]! > 0 ? 1 : 0;
    out[at] = L0 + L1 + L2;
    out[at + 1] = a0 + a1 + a2;
    out[at + 2] = b0 + b1 + b2;
    out[at + 3] = s0 + s1 + s2;
    out[at + 4] = n0 + n1 + n2;
    L0 = L1;
    a0 = a1;
    b0 = b1;
    s0 = s1;
    n0 = n1;
    L1 = L2;
    a1 = a2;
    b1 = b2;
    s1 = s2;
    n1 = n2;
  }
  out[last] = L0 + L1;
  out[last + 1] = a0 + a1;
  out[last + 2] = b0 + b1;
  out[last + 3] = s0 + s1;
  out[last + 4] = n0 + n1;
}
