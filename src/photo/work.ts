import { type Matrix, product } from '../colour/matrix.ts';
import { DECODE_8BIT, decode, FROM_XYZ, type RgbSpace, TO_XYZ } from '../colour/rgb.ts';
import { cubeRoot } from './cuberoot.ts';
import type { Mask } from './mask.ts';
import type { Pixels } from './pixels.ts';

/**
 * The photograph averaged over small blocks in linear light, in OKLab: small enough to look at
 * many times, fine enough that an accent of a thousandth of the area keeps hundreds of cells.
 */
export interface WorkImage {
  readonly width: number;
  readonly height: number;
  /** OKLab of each cell. */
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** Pixels of each cell that are looked at; 0 where it is transparent or rubbed out. */
  readonly seen: Uint16Array;
  /** All pixels that are looked at. */
  readonly pixels: number;
  /** Share of the looked-at cells that are clipped white or black in every channel. */
  readonly clipped: { readonly white: number; readonly black: number };
}

/** Cells of a work image, about; a photograph of fewer pixels keeps its own. */
const CELLS = 300_000;
/** Linear light as whole numbers, so that sums of a block are exact in any order. */
const UNIT = 1 << 20;

const inUnits = (v: number): number => Math.round(v * UNIT);
const lut8 = Float64Array.from(DECODE_8BIT, inUnits);
let lut16: Float64Array | undefined;
function table16(): Float64Array {
  lut16 ??= Float64Array.from({ length: 65536 }, (_, v) => inUnits(decode(v / 65535)));
  return lut16;
}

/** The matrix that takes a photograph's linear RGB to linear sRGB, then sets its light right. */
export function toLinearSrgb(space: RgbSpace, adapt?: Matrix): Matrix | undefined {
  if (space === 'srgb') return adapt;
  const toSrgb = product(FROM_XYZ.srgb, TO_XYZ[space]);
  return adapt ? product(adapt, toSrgb) : toSrgb;
}

export interface WorkOptions {
  readonly mask?: Mask | undefined;
  /** Applied in linear sRGB after averaging. */
  readonly adapt?: Matrix | undefined;
  /** Called with 0…1 now and then; true stops the work. */
  readonly pause?: ((done: number) => boolean) | undefined;
}

/**
 * Columns and rows of the work image of a photograph: the same for the same photograph at one, four
 * or twelve megapixels, so that they give the same harmony.
 */
export function workSize(width: number, height: number): [columns: number, rows: number] {
  const scale = Math.min(1, Math.sqrt(CELLS / (width * height)));
  return [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))];
}

/** Where each cell's pixels begin, and the end: blocks differ by one pixel at most. */
const cuts = (pixels: number, cells: number): Int32Array =>
  Int32Array.from({ length: cells + 1 }, (_, cell) => Math.round((cell * pixels) / cells));

/**
 * One pass over all pixels: exact sums of linear light per block, then OKLab of the averages.
 * Pixels less than half opaque are not looked at; a mask as large as the photograph is honoured
 * pixel by pixel, any other at the centre of each block.
 * @returns undefined when `pause` stopped it
 * @throws RangeError when there are not width × height × 4 values
 */
export function workImage(pixels: Pixels, options: WorkOptions = {}): WorkImage | undefined {
  const { width, height, data } = pixels;
  if (data.length !== width * height * 4)
    throw new RangeError(`${width} × ${height} pixels need ${width * height * 4} values`);
  const [columns, rows] = workSize(width, height);
  const across = cuts(width, columns);
  const along = cuts(height, rows);
  const work = emptyWork(columns, rows);
  const matrix = toLinearSrgb(pixels.space, options.adapt);
  const deep = data instanceof Uint16Array;
  // Four bytes at a time, where the memory allows it: a third less time.
  const words =
    !deep && data.byteOffset % 4 === 0
      ? new Int32Array(data.buffer, data.byteOffset, width * height)
      : undefined;
  const { mask } = options;
  const fine = mask && mask.width === width && mask.height === height ? mask.data : undefined;
  const sums = new Float64Array(columns * 3);
  const counts = new Uint32Array(columns);
  let total = 0;
  let kept = 0;
  let white = 0;
  let black = 0;

  for (let row = 0; row < rows; row++) {
    if ((row & 63) === 0 && options.pause?.(row / rows)) return undefined;
    const top = along[row]!;
    const bottom = along[row + 1]!;
    sums.fill(0);
    let opaque = -1;
    if (words && !fine)
      for (let y = top; y < bottom && opaque >>> 24 === 255; y++)
        opaque &= addWords(words, y * width, across, sums);
    if (words && !fine && opaque >>> 24 === 255)
      for (let column = 0; column < columns; column++)
        counts[column] = (bottom - top) * (across[column + 1]! - across[column]!);
    else {
      sums.fill(0);
      counts.fill(0);
      const lut = deep ? table16() : lut8;
      for (let y = top; y < bottom; y++)
        addRow(data, lut, deep ? 32768 : 128, fine, y * width, across, sums, counts);
    }
    const maskRow = mask && !fine ? Math.floor(((row + 0.5) / rows) * mask.height) * mask.width : 0;
    for (let column = 0; column < columns; column++) {
      const n = counts[column]!;
      if (n === 0) continue;
      if (mask && !fine) {
        const at = maskRow + Math.floor(((column + 0.5) / columns) * mask.width);
        if (mask.data[at] === 0) continue;
      }
      const scale = 1 / (n * UNIT);
      let red = sums[column * 3]! * scale;
      let green = sums[column * 3 + 1]! * scale;
      let blue = sums[column * 3 + 2]! * scale;
      if (red + green + blue > 2.99) white++;
      else if (red + green + blue < 0.0015) black++;
      if (matrix) {
        const r = red;
        const g = green;
        const bl = blue;
        red = matrix[0][0] * r + matrix[0][1] * g + matrix[0][2] * bl;
        green = matrix[1][0] * r + matrix[1][1] * g + matrix[1][2] * bl;
        blue = matrix[2][0] * r + matrix[2][1] * g + matrix[2][2] * bl;
      }
      // OKLab by the direct matrix of colour/oklab.ts.
      const l = cubeRoot(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
      const m = cubeRoot(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
      const s = cubeRoot(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
      const cell = row * columns + column;
      work.L[cell] = 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
      work.a[cell] = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s;
      work.b[cell] = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s;
      work.seen[cell] = n;
      total += n;
      kept++;
    }
  }
  const clipped = { white: kept ? white / kept : 0, black: kept ? black / kept : 0 };
  return { ...work, pixels: total, clipped };
}

const emptyWork = (width: number, height: number) => ({
  width,
  height,
  L: new Float32Array(width * height),
  a: new Float32Array(width * height),
  b: new Float32Array(width * height),
  seen: new Uint16Array(width * height),
});

/**
 * Adds one row of opaque pixels to its blocks: the loop that reads every pixel, so keep it bare.
 * Every engine's typed arrays are little-endian on today's machines: red is the lowest byte.
 * @returns all words and-ed: its highest byte is 255 only where every pixel was opaque
 */
function addWords(
  words: Int32Array,
  start: number,
  across: Int32Array,
  sums: Float64Array,
): number {
  let at = start;
  let all = -1;
  let sum = 0;
  for (let column = 1; column < across.length; column++, sum += 3) {
    const end = start + across[column]!;
    let red = 0;
    let green = 0;
    let blue = 0;
    for (; at < end; at++) {
      const word = words[at]!;
      all &= word;
      red += lut8[word & 255]!;
      green += lut8[(word >>> 8) & 255]!;
      blue += lut8[(word >>> 16) & 255]!;
    }
    sums[sum]! += red;
    sums[sum + 1]! += green;
    sums[sum + 2]! += blue;
  }
  return all;
}

/** The same for any depth, leaving out what is see-through or masked. */
function addRow(
  data: Pixels['data'],
  lut: Float64Array,
  half: number,
  mask: Uint8Array | undefined,
  start: number,
  across: Int32Array,
  sums: Float64Array,
  counts: Uint32Array,
): void {
  for (let column = 0; column + 1 < across.length; column++)
    for (let x = across[column]!; x < across[column + 1]!; x++) {
      const at = (start + x) * 4;
      if (data[at + 3]! < half || (mask && mask[start + x] === 0)) continue;
      sums[column * 3]! += lut[data[at]!]!;
      sums[column * 3 + 1]! += lut[data[at + 1]!]!;
      sums[column * 3 + 2]! += lut[data[at + 2]!]!;
      counts[column]!++;
    }
}
