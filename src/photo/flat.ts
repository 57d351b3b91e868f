import { emptyPlanes, type WorkImage } from './work.ts';

/** OKLab planes of a work image from which grain and the mixed rims between things are taken out. */
export interface FlatImage {
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/**
 * Each cell takes the mean of that 3 × 3 window, among the four set off diagonally by two cells and
 * its own, which varies least: grain is averaged away, and a cell that mixes two things at their
 * border takes the colour of one of them.
 * @see M. Kuwahara et al., 1976, for windows chosen by their variance (reference from memory)
 */
export function flatten(work: WorkImage): FlatImage {
  const { width, height, seen } = work;
  const out: FlatImage = emptyPlanes(width * height);
  // Windows of five rows at a time: memory that was not touched before is dearer than the sums.
  const windows = new Windows(work);
  const rows = Array.from({ length: 5 }, () => emptyRow(width));
  for (let next = 0; next < height + 2; next++) {
    if (next < height) windows.next(rows[next % 5]!);
    const y = next - 2;
    if (y < 0) continue;
    const here = rows[y % 5]!;
    const up = y >= 2 ? rows[(y - 2) % 5]! : here;
    const down = y + 2 < height ? rows[next % 5]! : here;
    for (let x = 0, i = y * width; x < width; x++, i++) {
      if (seen[i] === 0) continue;
      const left = x >= 2 ? x - 2 : x;
      const right = x + 2 < width ? x + 2 : x;
      // Its own window loses a near draw: else the rim of a thing would stay mixed.
      let best = here;
      let at = x;
      let least = here.spread[x]! * 1.05;
      if (up.spread[left]! < least) {
        best = up;
        at = left;
        least = up.spread[left]!;
      }
      if (up.spread[right]! < least) {
        best = up;
        at = right;
        least = up.spread[right]!;
      }
      if (down.spread[left]! < least) {
        best = down;
        at = left;
        least = down.spread[left]!;
      }
      if (down.spread[right]! < least) {
        best = down;
        at = right;
      }
      out.L[i] = best.L[at]!;
      out.a[i] = best.a[at]!;
      out.b[i] = best.b[at]!;
    }
  }
  return out;
}

/** Mean and variance of the window round each cell of a row. */
interface WindowRow extends FlatImage {
  readonly spread: Float32Array;
}

const emptyRow = (width: number): WindowRow => ({
  ...emptyPlanes(width),
  spread: new Float32Array(width),
});

/** The 3 × 3 windows of a work image over what is looked at, row by row. */
class Windows {
  private readonly work: WorkImage;
  /** Sums of three columns, for three rows at a time: L, a, b, their squares, and how many. */
  private readonly ring: readonly Float64Array[];
  private y = 0;

  constructor(work: WorkImage) {
    this.work = work;
    this.ring = [0, 1, 2].map(() => new Float64Array(work.width * 5));
    sumColumns(work, 0, this.ring[0]!);
  }

  /** Fills in the next row. */
  next({ L, a, b, spread }: WindowRow): void {
    const { width, height, seen } = this.work;
    const y = this.y++;
    const below = this.ring[(y + 1) % 3]!;
    if (y + 1 < height) sumColumns(this.work, y + 1, below);
    else below.fill(0);
    const above = this.ring[(y + 2) % 3]!;
    const here = this.ring[y % 3]!;
    let n = 0;
    let per = 0;
    for (let x = 0, at = 0, cell = y * width; x < width; x++, cell++, at += 5) {
      if (seen[cell] === 0) {
        spread[x] = Infinity;
        continue;
      }
      const count = above[at + 4]! + here[at + 4]! + below[at + 4]!;
      // Nearly always nine: then nothing is divided.
      if (count !== n) {
        n = count;
        per = 1 / n;
      }
      const meanL = (above[at]! + here[at]! + below[at]!) * per;
      const meanA = (above[at + 1]! + here[at + 1]! + below[at + 1]!) * per;
      const meanB = (above[at + 2]! + here[at + 2]! + below[at + 2]!) * per;
      const squares = (above[at + 3]! + here[at + 3]! + below[at + 3]!) * per;
      L[x] = meanL;
      a[x] = meanA;
      b[x] = meanB;
      spread[x] = squares - (meanL * meanL + meanA * meanA + meanB * meanB);
    }
  }
}

/** Sums of each cell of a row with its left and right neighbours; what is not looked at is nothing. */
function sumColumns(work: WorkImage, y: number, out: Float64Array): void {
  const { width, L, a, b, seen } = work;
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
  // A cell that is not looked at holds zeros.
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
