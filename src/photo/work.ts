import { DECODE_8BIT, decode, type RgbSpace } from '../colour/rgb.ts';
import { cubeRoot } from './cuberoot.ts';
import type { Mask } from './mask.ts';
import type { Pixels } from './pixels.ts';

/** Nine numbers, row by row, applied to linear sRGB. */
export type Matrix3 = readonly number[];

/**
 * The photograph averaged over square blocks in linear light, in OKLab: small enough to look at
 * many times, fine enough that an accent of a thousandth of the area keeps hundreds of cells.
 */
export interface WorkImage {
  readonly width: number;
  readonly height: number;
  /** Pixels along a block's side. */
  readonly block: number;
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

/** Cells that a work image has about: the block's side is the whole number that comes nearest. */
const CELLS = 600_000;
/** Linear light as whole numbers: sums of a block are exact, in any order. */
const UNIT = 1 << 20;

const lut8 = Int32Array.from(DECODE_8BIT, (v) => Math.round(v * UNIT));
let lut16: Int32Array | undefined;
function table(bits: 8 | 16): Int32Array {
  if (bits === 8) return lut8;
  lut16 ??= Int32Array.from({ length: 65536 }, (_, v) => Math.round(decode(v / 65535) * UNIT));
  return lut16;
}

/** Linear Display P3 to linear sRGB, from the primaries of both (colour/rgb.ts). */
const P3_TO_SRGB: Matrix3 = [
  1.2249401763, -0.2249401763, 0, -0.0420569547, 1.0420569547, 0, -0.0196375546, -0.0786360456,
  1.0982736002,
];

/** a · b, both row by row. */
export function multiply(a: Matrix3, b: Matrix3): Matrix3 {
  const out: number[] = [];
  for (let row = 0; row < 3; row++)
    for (let col = 0; col < 3; col++)
      out.push(
        a[row * 3]! * b[col]! + a[row * 3 + 1]! * b[3 + col]! + a[row * 3 + 2]! * b[6 + col]!,
      );
  return out;
}

/** The matrix that takes an image's linear RGB to linear sRGB, then sets its light right. */
export function toLinearSrgb(space: RgbSpace, adapt?: Matrix3): Matrix3 | undefined {
  if (space === 'srgb') return adapt;
  return adapt ? multiply(adapt, P3_TO_SRGB) : P3_TO_SRGB;
}

export interface WorkOptions {
  readonly mask?: Mask | undefined;
  /** Applied in linear sRGB after averaging. */
  readonly adapt?: Matrix3 | undefined;
  /** Called with 0…1 now and then; true stops the work. */
  readonly pause?: ((done: number) => boolean) | undefined;
}

/** Side of a block for a photograph of this size. */
export const blockOf = (width: number, height: number): number =>
  Math.max(1, Math.round(Math.sqrt((width * height) / CELLS)));

/**
 * One pass over all pixels: exact sums of linear light per block, then OKLab of the averages.
 * Pixels less than half opaque are not looked at; a mask as large as the photograph is honoured
 * pixel by pixel, any other at the centre of each block.
 * @returns undefined when `pause` stopped it
 */
export function workImage(pixels: Pixels, options: WorkOptions = {}): WorkImage | undefined {
  const { width, height, data } = pixels;
  if (data.length !== width * height * 4)
    throw new RangeError(`${width} × ${height} pixels need ${width * height * 4} values`);
  const block = blockOf(width, height);
  const columns = Math.ceil(width / block);
  const rows = Math.ceil(height / block);
  const cells = columns * rows;
  const L = new Float32Array(cells);
  const a = new Float32Array(cells);
  const b = new Float32Array(cells);
  const seen = new Uint16Array(cells);
  const matrix = toLinearSrgb(pixels.space, options.adapt);
  const lut = table(data instanceof Uint16Array ? 16 : 8);
  const half = data instanceof Uint16Array ? 32768 : 128;
  const { mask } = options;
  const fine = mask && mask.width === width && mask.height === height ? mask.data : undefined;
  const sums = new Int32Array(columns * 3);
  const counts = new Uint16Array(columns);
  let total = 0;
  let kept = 0;
  let white = 0;
  let black = 0;

  for (let row = 0; row < rows; row++) {
    if ((row & 63) === 0 && options.pause?.(row / rows)) return undefined;
    sums.fill(0);
    counts.fill(0);
    const bottom = Math.min(height, (row + 1) * block);
    for (let y = row * block; y < bottom; y++) {
      if (fine) addMasked(data, lut, half, fine, width, y, block, sums, counts);
      else addRow(data, lut, half, width, y, block, sums, counts);
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
        const [r, g, bl] = [red, green, blue];
        red = matrix[0]! * r + matrix[1]! * g + matrix[2]! * bl;
        green = matrix[3]! * r + matrix[4]! * g + matrix[5]! * bl;
        blue = matrix[6]! * r + matrix[7]! * g + matrix[8]! * bl;
      }
      // OKLab by the direct matrix of colour/oklab.ts.
      const l = cubeRoot(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue);
      const m = cubeRoot(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue);
      const s = cubeRoot(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue);
      const cell = row * columns + column;
      L[cell] = 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
      a[cell] = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s;
      b[cell] = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s;
      seen[cell] = n;
      total += n;
      kept++;
    }
  }
  return {
    width: columns,
    height: rows,
    block,
    L,
    a,
    b,
    seen,
    pixels: total,
    clipped: { white: kept ? white / kept : 0, black: kept ? black / kept : 0 },
  };
}

/** Adds one row of pixels to its blocks. The loop that reads every pixel: keep it bare. */
function addRow(
  data: Pixels['data'],
  lut: Int32Array,
  half: number,
  width: number,
  y: number,
  block: number,
  sums: Int32Array,
  counts: Uint16Array,
): void {
  let at = y * width * 4;
  let column = 0;
  for (let x = 0; x < width; column++) {
    const end = Math.min(x + block, width);
    let red = 0;
    let green = 0;
    let blue = 0;
    let n = 0;
    for (; x < end; x++, at += 4) {
      if (data[at + 3]! < half) continue;
      red += lut[data[at]!]!;
      green += lut[data[at + 1]!]!;
      blue += lut[data[at + 2]!]!;
      n++;
    }
    sums[column * 3]! += red;
    sums[column * 3 + 1]! += green;
    sums[column * 3 + 2]! += blue;
    counts[column]! += n;
  }
}

function addMasked(
  data: Pixels['data'],
  lut: Int32Array,
  half: number,
  mask: Uint8Array,
  width: number,
  y: number,
  block: number,
  sums: Int32Array,
  counts: Uint16Array,
): void {
  for (let x = 0; x < width; x++) {
    const at = (y * width + x) * 4;
    if (mask[y * width + x] === 0 || data[at + 3]! < half) continue;
    const column = Math.floor(x / block);
    sums[column * 3]! += lut[data[at]!]!;
    sums[column * 3 + 1]! += lut[data[at + 1]!]!;
    sums[column * 3 + 2]! += lut[data[at + 2]!]!;
    counts[column]!++;
  }
}
