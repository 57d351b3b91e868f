import { DECODE_8BIT, decode } from '../colour/rgb.ts';
import type { Mask } from './mask.ts';
import type { Pixels } from './pixels.ts';

/** Linear light as whole numbers, so that sums of a block are exact in any order. */
export const UNIT = 1 << 20;
/** Parts of a pixel that are told apart where two cells share it. */
const PARTS = 256;

const inUnits = (v: number): number => Math.round(v * UNIT);
const lut8 = Int32Array.from(DECODE_8BIT, inUnits);

/** Where two channels are summed in one number the second counts so many times, and fewer pixels than this ÷ {@link UNIT} fit. */
const SECOND = 2 ** 26;
let pairs: Float64Array | undefined;
/** The light of both channels in the lower half of a word, in one number. */
function pairTable(): Float64Array {
  pairs ??= Float64Array.from({ length: 65536 }, (_, v) => lut8[v & 255]! + SECOND * lut8[v >> 8]!);
  return pairs;
}
let lut16: Int32Array | undefined;
function table16(): Int32Array {
  lut16 ??= Int32Array.from({ length: 65536 }, (_, v) => inUnits(decode(v / 65535)));
  return lut16;
}

/** Where cells end along one edge: the pixel that each shares with the next, and the part of it, 0…255 of 256. */
interface Cuts {
  readonly at: Int32Array;
  readonly part: Float64Array;
  /** Width of each cell in pixels, and of the widest. */
  readonly wide: Float64Array;
  readonly widest: number;
}

function cutsOf(pixels: number, cells: number): Cuts {
  const at = new Int32Array(cells);
  const part = new Float64Array(cells);
  const wide = new Float64Array(cells);
  let before = 0;
  for (let cell = 0; cell < cells; cell++) {
    const end = Math.round(((cell + 1) * pixels * PARTS) / cells);
    at[cell] = Math.floor(end / PARTS);
    part[cell] = (end % PARTS) / PARTS;
    wide[cell] = (end - before) / PARTS;
    before = end;
  }
  return { at, part, wide, widest: Math.ceil(pixels / cells) };
}

/** A row of cells: sums of linear light in units, red, green, blue, and how many pixels they are of. */
export interface CellRow {
  readonly sums: Float64Array;
  readonly seen: Float64Array;
}

/** Gets every row of cells that is complete, and may not keep it. */
export interface CellRows {
  finish(row: number, cells: CellRow): void;
}

export interface AverageOptions {
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** As large as the photograph: 0 is left out. */
  readonly mask?: Mask | undefined;
  /** Rows of cells that are wanted; all unless told. */
  readonly part?: Span | undefined;
}

/** Rows, the last one left out. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Averages a photograph over the cells of a raster, exactly by area: a pixel that lies in two cells
 * gives each its part, so that a photograph has the same cells at any size. It takes the pixels in
 * strips from the top, so that never more than a strip of them need be at hand. The same cells come of
 * a photograph that is averaged in parts.
 */
export class Averaging {
  /** Rows of pixels that it is to be given. */
  readonly lines: Span;
  private readonly across: Cuts;
  private readonly along: Cuts;
  private readonly cells: CellRow;
  private readonly row: CellRow;
  private readonly options: AverageOptions;
  private readonly to: CellRows;
  /** Rows of pixels, opaque throughout, that the row of cells has taken: none of them is counted singly. */
  private whole = 0;
  /** The first row of cells that is told, the one under way, and the row of pixels that comes next. */
  private readonly first: number;
  private cell: number;
  private y: number;

  constructor(options: AverageOptions, to: CellRows) {
    const { width, height, columns, rows, part = { from: 0, to: rows } } = options;
    this.options = options;
    this.to = to;
    this.across = cutsOf(width, columns);
    this.along = cutsOf(height, rows);
    this.cells = cellRow(columns);
    this.row = cellRow(columns);
    const { at, part: shared } = this.along;
    this.lines = {
      from: part.from === 0 ? 0 : at[part.from - 1]!,
      to: at[part.to - 1]! + Math.ceil(shared[part.to - 1]!),
    };
    this.y = this.lines.from;
    // A row of pixels that is shared with the cells before ends those, of which nothing is told.
    this.first = part.from;
    this.cell = part.from === 0 || shared[part.from - 1] === 0 ? part.from : part.from - 1;
  }

  /**
   * Takes the next rows of pixels.
   * @param data RGBA, or BGRA whose last value means nothing; `rows` rows of it
   */
  add(data: Pixels['data'], rows: number, order: 'rgba' | 'bgrx' = 'rgba'): void {
    const { width, mask } = this.options;
    // Four bytes at a time, where the memory allows it. Every engine's typed arrays are little-endian
    // on today's machines: the first value is the lowest byte.
    const words =
      !mask && data.BYTES_PER_ELEMENT === 1 && data.byteOffset % 4 === 0
        ? new Int32Array(data.buffer, data.byteOffset, rows * width)
        : undefined;
    const isPlain = order === 'bgrx' || (words !== undefined && isOpaque(words));
    const red = order === 'rgba' ? 0 : 2;
    const { at, part } = this.along;
    const hasRoom = this.across.widest * 3 < SECOND / UNIT;
    for (let r = 0; r < rows; r++, this.y++) {
      const start = r * width;
      const end = at[this.cell]!;
      if (words && isPlain && hasRoom && r + 3 <= rows && this.y + 3 <= end) {
        addThree(words, start, width, this.across, new Filling(this.cells.sums, red));
        this.whole += 3;
        r += 2;
        this.y += 2;
      } else {
        const plain = words !== undefined && isPlain;
        const shared = this.y === end;
        if (plain) {
          if (shared) this.row.sums.fill(0);
          const { sums } = shared ? this.row : this.cells;
          addWords(words, start, this.across, new Filling(sums, red));
        } else {
          addRow(data, start, mask?.data, this.y * width, this.across, this.row, order);
        }
        if (shared) {
          const first = part[this.cell]!;
          this.take(first, plain);
          this.close();
          this.take(1 - first, plain);
        } else if (plain) this.whole++;
        else this.take(1, false);
      }
      if (this.y + 1 === at[this.cell] && part[this.cell] === 0) this.close();
    }
  }

  /** Tells a row of cells that is complete, and begins the next. */
  private close(): void {
    const { sums, seen } = this.cells;
    const { wide } = this.across;
    const { whole } = this;
    if (whole > 0) for (let i = 0; i < seen.length; i++) seen[i]! += whole * wide[i]!;
    if (this.cell >= this.first) this.to.finish(this.cell, this.cells);
    sums.fill(0);
    seen.fill(0);
    this.whole = 0;
    this.cell++;
  }

  /** Takes a part of the row of pixels that was summed last. */
  private take(part: number, isWhole = false): void {
    const { sums, seen } = this.cells;
    const { sums: rowSums, seen: rowSeen } = this.row;
    for (let i = 0; i < sums.length; i++) sums[i]! += part * rowSums[i]!;
    if (isWhole) this.whole += part;
    else for (let i = 0; i < seen.length; i++) seen[i]! += part * rowSeen[i]!;
  }
}

const cellRow = (columns: number): CellRow => ({
  sums: new Float64Array(columns * 3),
  seen: new Float64Array(columns),
});

/** Whether all pixels of RGBA are opaque. */
function isOpaque(words: Int32Array): boolean {
  let all = -1;
  for (let p = 0; p < words.length; p++) all &= words[p]!;
  return all >>> 24 === 255;
}

/** Fills a row of cells from the left: what a cell shares with the next is kept until that comes. */
class Filling {
  private readonly sums: Float64Array;
  private readonly red: 0 | 2;
  private left0 = 0;
  private left1 = 0;
  private left2 = 0;

  /** @param red 0 where red is the lowest of a word's bytes, 2 where blue is */
  constructor(sums: Float64Array, red: 0 | 2) {
    this.sums = sums;
    this.red = red;
  }

  /**
   * Adds the sums of a cell's inner pixels, and the part `f` of the pixels that it shares with the next.
   * @param at of the cell's own sums
   */
  add(
    at: number,
    sum0: number,
    sum1: number,
    sum2: number,
    f: number,
    v0: number,
    v1: number,
    v2: number,
  ): void {
    const { sums, red } = this;
    const f0 = f * v0;
    const f1 = f * v1;
    const f2 = f * v2;
    sums[at + red]! += this.left0 + sum0 + f0;
    sums[at + 1]! += this.left1 + sum1 + f1;
    sums[at + 2 - red]! += this.left2 + sum2 + f2;
    this.left0 = v0 - f0;
    this.left1 = v1 - f1;
    this.left2 = v2 - f2;
  }
}

/**
 * Adds one row of opaque pixels to its cells: the loop that reads every pixel, so keep it bare. A cell
 * has less than 2048 pixels a row, so that whole numbers hold the sums of its inner ones.
 */
function addWords(words: Int32Array, start: number, { at, part }: Cuts, cells: Filling): void {
  const lut = lut8;
  let p = start;
  for (let column = 0; column < at.length; column++) {
    const end = start + at[column]!;
    let sum0 = 0;
    let sum1 = 0;
    let sum2 = 0;
    for (; p < end; p++) {
      const word = words[p]!;
      sum0 = (sum0 + lut[word & 255]!) | 0;
      sum1 = (sum1 + lut[(word >>> 8) & 255]!) | 0;
      sum2 = (sum2 + lut[(word >>> 16) & 255]!) | 0;
    }
    const f = part[column]!;
    const word = f === 0 ? 0 : words[p++]!;
    const v0 = lut[word & 255]!;
    const v1 = lut[(word >>> 8) & 255]!;
    const v2 = lut[(word >>> 16) & 255]!;
    cells.add(column * 3, sum0, sum1, sum2, f, v0, v1, v2);
  }
}

/**
 * The same for three rows of pixels at once, two channels in one number: a look into memory less for each
 * pixel, and the cells are gone through a third as often.
 */
function addThree(
  words: Int32Array,
  start: number,
  width: number,
  { at, part }: Cuts,
  cells: Filling,
): void {
  const two = pairTable();
  const one = lut8;
  let p = start;
  let q = p + width;
  let r = q + width;
  for (let column = 0; column < at.length; column++) {
    const end = start + at[column]!;
    let both = 0;
    let sum2 = 0;
    for (; p < end; p++, q++, r++) {
      const u = words[p]!;
      const v = words[q]!;
      const w = words[r]!;
      both += two[u & 0xffff]! + two[v & 0xffff]! + two[w & 0xffff]!;
      sum2 = (sum2 + one[(u >>> 16) & 255]! + one[(v >>> 16) & 255]! + one[(w >>> 16) & 255]!) | 0;
    }
    const sum1 = Math.floor(both * (1 / SECOND));
    const f = part[column]!;
    let shared = 0;
    let v2 = 0;
    if (f > 0) {
      const u = words[p++]!;
      const v = words[q++]!;
      const w = words[r++]!;
      shared = two[u & 0xffff]! + two[v & 0xffff]! + two[w & 0xffff]!;
      v2 = one[(u >>> 16) & 255]! + one[(v >>> 16) & 255]! + one[(w >>> 16) & 255]!;
    }
    const v1 = Math.floor(shared * (1 / SECOND));
    cells.add(column * 3, both - SECOND * sum1, sum1, sum2, f, shared - SECOND * v1, v1, v2);
  }
}

/** The same for any depth, leaving out what is less than half opaque or masked. */
function addRow(
  data: Pixels['data'],
  start: number,
  mask: Uint8Array | undefined,
  maskStart: number,
  { at, part }: Cuts,
  { sums, seen }: CellRow,
  order: 'rgba' | 'bgrx',
): void {
  const deep = data instanceof Uint16Array;
  const lut = deep ? table16() : lut8;
  const half = order === 'bgrx' ? 0 : deep ? 32768 : 128;
  const [red, blue] = order === 'bgrx' ? [2, 0] : [0, 2];
  sums.fill(0);
  seen.fill(0);
  const give = (x: number, column: number, weight: number) => {
    const i = (start + x) * 4;
    if (weight === 0 || data[i + 3]! < half || (mask && mask[maskStart + x] === 0)) return;
    sums[column * 3]! += weight * lut[data[i + red]!]!;
    sums[column * 3 + 1]! += weight * lut[data[i + 1]!]!;
    sums[column * 3 + 2]! += weight * lut[data[i + blue]!]!;
    seen[column]! += weight;
  };
  let x = 0;
  for (let column = 0; column < at.length; column++) {
    for (; x < at[column]!; x++) give(x, column, 1);
    const f = part[column]!;
    if (f === 0) continue;
    give(x, column, f);
    give(x++, column + 1, 1 - f);
  }
}
