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

/** Chooses for the cells of one row, from the windows that stand at those places. */
function chooseRow(
  { L, a, b, spread, own }: Windows,
  seen: Float32Array,
  row: number,
  width: number,
  [here, up, down]: readonly [here: number, up: number, down: number],
  out: FlatImage,
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
    // Which of them it is cannot be foreseen: without a branch that takes a third of the time.
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

/** All but the last bits of a spread, which hold whose it is: 2⁻²⁰ of it. */
const RANK = ~7;

/** The lower of two whole numbers 0…2³¹ − 1. */
function lower(p: number, q: number): number {
  const d = q - p;
  return p + (d & (d >> 31));
}

/** The 3 × 3 windows of a work image over what is looked at, row by row; the last five rows are kept. */
class Windows {
  /** Mean of the window round each cell. */
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** Its variance, as bits: numbers that are not below 0 are in the order of their bits. */
  readonly spread: Int32Array;
  /** The same for the cell in the middle, which loses a near draw: else the rim of a thing would stay mixed. */
  readonly own: Int32Array;
  private readonly spreads: Float32Array;
  private readonly owns: Float32Array;
  private readonly work: WorkImage;
  /** Sums of three columns, for three rows at a time: L, a, b, their squares, and how many. */
  private readonly ring: readonly Float64Array[];
  private y = 0;

  constructor(work: WorkImage) {
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

  /** Where a row's windows stand. */
  at(y: number): number {
    return (y % 5) * this.work.width;
  }

  /** Fills in the next row. */
  next(): void {
    const { L, a, b, spreads, owns } = this;
    const { width, height, seen } = this.work;
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
      // Nearly always nine: then nothing is divided.
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
