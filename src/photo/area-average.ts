import { DECODE_8BIT, decode } from '../colour/rgb.ts';
import type { Mask } from './mask.ts';
import type { Pixels } from './pixels.ts';

/** Fixed-point unit of linear light: sums of integers are exact in any order. */
export const LIGHT_UNIT = 1 << 20;
/** Subpixel steps: a pixel on a cell boundary is divided in 1/256 of its width or height. */
const SUBPIXEL_STEPS = 256;

const inUnits = (v: number): number => Math.round(v * LIGHT_UNIT);
const lut8 = Int32Array.from(DECODE_8BIT, inUnits);

/**
 * Packing factor: one float64 holds two channel sums, first + SECOND × second. The first sum has to
 * stay below SECOND, so a packed sum takes fewer than SECOND / {@link LIGHT_UNIT} = 64 pixels.
 */
const PACK_FACTOR = 2 ** 26;
let pairs: Float64Array | undefined;
/** Packed linear light of the two low bytes of a pixel, indexed by its low 16 bits. */
function pairTable(): Float64Array {
  pairs ??= Float64Array.from(
    { length: 65536 },
    (_, v) => lut8[v & 255]! + PACK_FACTOR * lut8[v >> 8]!,
  );
  return pairs;
}
let lut16: Int32Array | undefined;
function table16(): Int32Array {
  lut16 ??= Int32Array.from({ length: 65536 }, (_, v) => inUnits(decode(v / 65535)));
  return lut16;
}

/**
 * Cell boundaries along one axis: the pixel that each cell shares with the next, and the fraction
 * of it, 0…255/256, that belongs to the first.
 */
interface CellBoundaries {
  readonly at: Int32Array;
  readonly part: Float64Array;
  /** Width of each cell in pixels; `widest` is the upper bound. */
  readonly wide: Float64Array;
  readonly widest: number;
}

function cellBoundaries(pixels: number, cells: number): CellBoundaries {
  const at = new Int32Array(cells);
  const part = new Float64Array(cells);
  const wide = new Float64Array(cells);
  let before = 0;
  for (let cell = 0; cell < cells; cell++) {
    const end = Math.round(((cell + 1) * pixels * SUBPIXEL_STEPS) / cells);
    at[cell] = Math.floor(end / SUBPIXEL_STEPS);
    part[cell] = (end % SUBPIXEL_STEPS) / SUBPIXEL_STEPS;
    wide[cell] = (end - before) / SUBPIXEL_STEPS;
    before = end;
  }
  return { at, part, wide, widest: Math.ceil(pixels / cells) };
}

/**
 * One row of cells: sums of linear light in {@link LIGHT_UNIT}s (red, green, blue) and the pixel count of
 * each cell.
 */
export interface CellRow {
  readonly sums: Float64Array;
  readonly pixelCounts: Float64Array;
}

/** Receives each completed row of cells. The buffers are reused: copy what you keep. */
export interface CellRowSink {
  finish(row: number, cells: CellRow): void;
}

interface AverageOptions {
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  /** Same size as the photograph; pixels with value 0 are excluded. */
  readonly mask?: Mask | undefined;
  /** Rows of cells to compute; default: all. */
  readonly part?: RowRange | undefined;
}

/** A range of rows; `to` is exclusive. */
export interface RowRange {
  readonly from: number;
  readonly to: number;
}

/**
 * Area-averages a photograph over a raster of cells. A pixel that overlaps two cells is divided
 * between them by area, so the result is nearly independent of resolution. Pixels arrive in strips
 * from the top, so only one strip has to be in memory. Averaging in parts gives exactly the same
 * cells as averaging in one pass: the sums are fixed-point.
 */
export class AreaAverager {
  /** Rows of pixels that the caller passes to {@link add}. */
  readonly pixelRows: RowRange;
  private readonly across: CellBoundaries;
  private readonly along: CellBoundaries;
  private readonly cells: CellRow;
  private readonly row: CellRow;
  private readonly options: AverageOptions;
  private readonly to: CellRowSink;
  /**
   * Fully opaque pixel rows added to the current row of cells; their counts are added once, on
   * closing.
   */
  private whole = 0;
  /** First row of cells to report, the current row of cells, and the next row of pixels. */
  private readonly first: number;
  private cell: number;
  private y: number;

  constructor(options: AverageOptions, to: CellRowSink) {
    const { width, height, columns, rows, part = { from: 0, to: rows } } = options;
    this.options = options;
    this.to = to;
    this.across = cellBoundaries(width, columns);
    this.along = cellBoundaries(height, rows);
    this.cells = cellRow(columns);
    this.row = cellRow(columns);
    const { at, part: shared } = this.along;
    this.pixelRows = {
      from: part.from === 0 ? 0 : at[part.from - 1]!,
      to: at[part.to - 1]! + Math.ceil(shared[part.to - 1]!),
    };
    this.y = this.pixelRows.from;
    // A pixel row shared with the previous row of cells also closes that row, which is not
    // reported.
    this.first = part.from;
    this.cell = part.from === 0 || shared[part.from - 1] === 0 ? part.from : part.from - 1;
  }

  /**
   * Adds the next rows of pixels.
   * @param data RGBA, or BGRX (blue first, fourth byte undefined); `rows` rows of pixels
   */
  add(data: Pixels['data'], rows: number, order: 'rgba' | 'bgrx' = 'rgba'): void {
    const { width, mask } = this.options;
    // Read four bytes at a time where the buffer allows it. Typed arrays are little-endian on all
    // current machines: the first value is the lowest byte.
    const words =
      !mask && data.BYTES_PER_ELEMENT === 1 && data.byteOffset % 4 === 0
        ? new Int32Array(data.buffer, data.byteOffset, rows * width)
        : undefined;
    const isPlain = order === 'bgrx' || (words !== undefined && isOpaque(words));
    const red = order === 'rgba' ? 0 : 2;
    const { at, part } = this.along;
    const hasRoom = this.across.widest * 3 < PACK_FACTOR / LIGHT_UNIT;
    for (let r = 0; r < rows; r++, this.y++) {
      const start = r * width;
      const end = at[this.cell]!;
      if (words && isPlain && hasRoom && r + 3 <= rows && this.y + 3 <= end) {
        addThree(words, start, width, this.across, new CellRowFiller(this.cells.sums, red));
        this.whole += 3;
        r += 2;
        this.y += 2;
      } else {
        const plain = words !== undefined && isPlain;
        const shared = this.y === end;
        if (plain) {
          if (shared) this.row.sums.fill(0);
          const { sums } = shared ? this.row : this.cells;
          addWords(words, start, this.across, new CellRowFiller(sums, red));
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

  /** Reports the completed row of cells and starts the next. */
  private close(): void {
    const { sums, pixelCounts: seen } = this.cells;
    const { wide } = this.across;
    const { whole } = this;
    if (whole > 0) for (let i = 0; i < seen.length; i++) seen[i]! += whole * wide[i]!;
    if (this.cell >= this.first) this.to.finish(this.cell, this.cells);
    sums.fill(0);
    seen.fill(0);
    this.whole = 0;
    this.cell++;
  }

  /** Adds a fraction of the last summed pixel row to the current row of cells. */
  private take(part: number, isWhole = false): void {
    const { sums, pixelCounts: seen } = this.cells;
    const { sums: rowSums, pixelCounts: rowSeen } = this.row;
    for (let i = 0; i < sums.length; i++) sums[i]! += part * rowSums[i]!;
    if (isWhole) this.whole += part;
    else for (let i = 0; i < seen.length; i++) seen[i]! += part * rowSeen[i]!;
  }
}

const cellRow = (columns: number): CellRow => ({
  sums: new Float64Array(columns * 3),
  pixelCounts: new Float64Array(columns),
});

/** Whether every RGBA pixel is fully opaque. */
function isOpaque(words: Int32Array): boolean {
  let all = -1;
  for (let p = 0; p < words.length; p++) all &= words[p]!;
  return all >>> 24 === 255;
}

/**
 * Fills a row of cells from left to right and carries over the share of a boundary pixel that
 * belongs to the next cell.
 */
class CellRowFiller {
  private readonly sums: Float64Array;
  private readonly red: 0 | 2;
  private left0 = 0;
  private left1 = 0;
  private left2 = 0;

  /** @param red 0 if red is the lowest byte of a word, 2 if blue is */
  constructor(sums: Float64Array, red: 0 | 2) {
    this.sums = sums;
    this.red = red;
  }

  /**
   * Adds the sums of a cell's inner pixels and the fraction `f` of the pixels on its boundary.
   * @param at index of the cell's first sum
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
 * Adds one row of opaque pixels to its cells. This loop reads every pixel: keep it minimal. Int32
 * sums suffice, because a cell is less than 2048 pixels wide.
 */
function addWords(
  words: Int32Array,
  start: number,
  { at, part }: CellBoundaries,
  cells: CellRowFiller,
): void {
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
 * Like {@link addWords}, for three pixel rows at once with two channels packed in one number: one
 * table lookup less per pixel, and a third of the passes over the cells.
 */
function addThree(
  words: Int32Array,
  start: number,
  width: number,
  { at, part }: CellBoundaries,
  cells: CellRowFiller,
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
    const sum1 = Math.floor(both * (1 / PACK_FACTOR));
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
    const v1 = Math.floor(shared * (1 / PACK_FACTOR));
    cells.add(
      column * 3,
      both - PACK_FACTOR * sum1,
      sum1,
      sum2,
      f,
      shared - PACK_FACTOR * v1,
      v1,
      v2,
    );
  }
}

/** Sums one pixel row of any bit depth; excludes masked pixels and those less than half opaque. */
function addRow(
  data: Pixels['data'],
  start: number,
  mask: Uint8Array | undefined,
  maskStart: number,
  { at, part }: CellBoundaries,
  { sums, pixelCounts: seen }: CellRow,
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
