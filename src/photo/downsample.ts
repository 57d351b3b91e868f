import { type Matrix, product } from '../colour/matrix.ts';
import { OKLAB_CONES, OKLAB_OPPONENT } from '../colour/oklab.ts';
import { FROM_XYZ, type RgbSpace, TO_XYZ } from '../colour/rgb.ts';
import {
  AreaAverager,
  type CellRow,
  type CellRowSink,
  LIGHT_UNIT,
  type RowRange,
} from './area-average.ts';
import { cubeRoot } from './cube-root.ts';
import type { Mask } from './mask.ts';
import type { Pixels } from './pixels.ts';

/**
 * The photograph in OKLab, downsampled by averaging cells in linear light: small enough for many
 * passes, fine enough that an accent of a thousandth of the area keeps hundreds of cells.
 */
export interface DownsampledImage {
  readonly width: number;
  readonly height: number;
  /** OKLab of each cell, row by row. */
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** Pixel count of each cell; 0 where it is transparent or masked. */
  readonly pixelCounts: Float32Array;
  /** Number of included pixels. */
  readonly includedPixels: number;
  /** Share of the included cells that are clipped to white or black in every channel. */
  readonly clipped: { readonly white: number; readonly black: number };
  /** Whether any pixel was opaque, masked or not. */
  readonly opaque: boolean;
}

/** Approximate number of cells; a photograph with fewer pixels keeps its own resolution. */
const CELLS = 300_000;

/**
 * Matrix from a photograph's linear RGB to linear sRGB, followed by white balance; undefined for
 * the identity.
 */
export function toLinearSrgb(space: RgbSpace, adapt?: Matrix): Matrix | undefined {
  if (space === 'srgb') return adapt;
  const toSrgb = product(FROM_XYZ.srgb, TO_XYZ[space]);
  return adapt ? product(adapt, toSrgb) : toSrgb;
}

/** Options for downsampling. */
export interface DownsampleOptions {
  readonly mask?: Mask | undefined;
  /** White balance: applied in linear sRGB, after averaging. */
  readonly adapt?: Matrix | undefined;
  /** Called now and then with progress 0…1; returning true stops. */
  readonly pause?: ((done: number) => boolean) | undefined;
}

/**
 * Columns and rows of a photograph's downsampled image. They are the same at one, four or twelve
 * megapixels, so the harmony is the same too.
 */
export function downsampledSize(width: number, height: number): [columns: number, rows: number] {
  const scale = Math.min(1, Math.sqrt(CELLS / (width * height)));
  return [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))];
}

/** Pixel rows per strip, small enough to stay in the processor's cache. */
const STRIP = 64;

/**
 * Downsamples a photograph in one pass: exact sums of linear light per cell, then OKLab of the
 * means. Pixels less than half opaque are excluded. A mask of the photograph's own size applies per
 * pixel, any other at the centre of each cell.
 * @returns undefined if `pause` stopped it
 * @throws RangeError if there are not width × height × 4 values
 */
export function downsampled(
  pixels: Pixels,
  options: DownsampleOptions = {},
): DownsampledImage | undefined {
  const { width, height, data, space } = pixels;
  if (data.length !== width * height * 4)
    throw new RangeError(`${width} × ${height} pixels need ${width * height * 4} values`);
  const making = new Downsampler({ width, height, space }, options);
  for (let y = 0; y < height; y += STRIP) {
    if (options.pause?.(y / height)) return undefined;
    const rows = Math.min(STRIP, height - y);
    making.add(data.subarray(y * width * 4, (y + rows) * width * 4), rows);
  }
  return making.mergeRows();
}

/** Some rows of a work image, computed in one pass; {@link Downsampler.mergeRows} merges them. */
export interface DownsampledRows
  extends Pick<DownsampledImage, 'L' | 'a' | 'b' | 'pixelCounts' | 'opaque'> {
  readonly rows: RowRange;
  /** Number of included pixels. */
  readonly pixels: number;
  /** Number of included cells, and how many of them are clipped to white or to black. */
  readonly kept: number;
  readonly white: number;
  readonly black: number;
}

/** Builds a work image, or some rows of it, from strips of pixels. */
export class Downsampler implements CellRowSink {
  private readonly size: readonly [columns: number, rows: number];
  private readonly rows: RowRange;
  private readonly cells: Pick<DownsampledImage, 'L' | 'a' | 'b' | 'pixelCounts'>;
  private readonly averaging: AreaAverager;
  /** From the photograph's linear RGB to the cone signals of OKLab. */
  private readonly toCones: Matrix;
  /** A mask that is not of the photograph's size. */
  private readonly coarse: Mask | undefined;
  private total = 0;
  private kept = 0;
  private white = 0;
  private black = 0;
  private opaque = false;

  constructor(
    { width, height, space }: Pick<Pixels, 'width' | 'height' | 'space'>,
    { mask, adapt }: Pick<DownsampleOptions, 'mask' | 'adapt'> = {},
    part?: RowRange,
  ) {
    const [columns, rows] = downsampledSize(width, height);
    this.size = [columns, rows];
    this.rows = part ?? { from: 0, to: rows };
    // Allocate down to the last row: the parts below are merged into the first.
    this.cells = emptyCells(columns * (rows - this.rows.from));
    const toSrgb = toLinearSrgb(space, adapt);
    this.toCones = toSrgb ? product(OKLAB_CONES, toSrgb) : OKLAB_CONES;
    const isFine = mask !== undefined && mask.width === width && mask.height === height;
    this.coarse = isFine ? undefined : mask;
    this.averaging = new AreaAverager(
      { width, height, columns, rows, mask: isFine ? mask : undefined, part: this.rows },
      this,
    );
    // A per-pixel mask hides pixels before their opacity is tested.
    this.opaque = isFine;
  }

  /** Rows of pixels that the caller passes to {@link add}. */
  get lines(): RowRange {
    return this.averaging.pixelRows;
  }

  /** Adds the next rows of pixels from the top; `bgrx`: blue first, fourth byte undefined. */
  add(data: Pixels['data'], rows: number, order: 'rgba' | 'bgrx' = 'rgba'): void {
    this.averaging.add(data, rows, order);
  }

  /** The finished rows; the arrays share memory with this object. */
  finishedRows(): DownsampledRows {
    const { rows, cells, total: pixels, kept, white, black, opaque } = this;
    const end = this.size[0] * (rows.to - rows.from);
    return {
      rows,
      L: cells.L.subarray(0, end),
      a: cells.a.subarray(0, end),
      b: cells.b.subarray(0, end),
      pixelCounts: cells.pixelCounts.subarray(0, end),
      pixels,
      kept,
      white,
      black,
      opaque,
    };
  }

  /** Merges this part, which starts at the first row, with the parts below it. */
  mergeRows(others: readonly DownsampledRows[] = []): DownsampledImage {
    const parts = [this.finishedRows(), ...others];
    const [width, height] = this.size;
    const sum = (of: (part: DownsampledRows) => number) =>
      parts.reduce((all, part) => all + of(part), 0);
    const kept = sum((part) => part.kept);
    const { cells } = this;
    for (const part of others)
      for (const key of ['L', 'a', 'b', 'pixelCounts'] as const)
        cells[key].set(part[key], part.rows.from * width);
    return {
      width,
      height,
      ...cells,
      includedPixels: sum((part) => part.pixels),
      clipped: {
        white: kept ? sum(({ white }) => white) / kept : 0,
        black: kept ? sum(({ black }) => black) / kept : 0,
      },
      opaque: parts.some((part) => part.opaque),
    };
  }

  /** Callback of the averaging: converts one row of cell sums to OKLab. */
  finish(row: number, { sums, pixelCounts: seen }: CellRow): void {
    const { coarse } = this;
    const { L, a, b, pixelCounts: looked } = this.cells;
    const [columns, rows] = this.size;
    const maskRow = coarse ? Math.floor(((row + 0.5) / rows) * coarse.height) * coarse.width : 0;
    const [[lr, lg, lb], [mr, mg, mb], [sr, sg, sb]] = this.toCones;
    const [[Ll, Lm, Ls], [al, am, as], [bl, bm, bs]] = OKLAB_OPPONENT;
    let total = 0;
    let kept = 0;
    let white = 0;
    let black = 0;
    for (
      let column = 0, cell = (row - this.rows.from) * columns;
      column < columns;
      column++, cell++
    ) {
      const n = seen[column]!;
      if (n === 0) continue;
      this.opaque = true;
      if (coarse) {
        const at = maskRow + Math.floor(((column + 0.5) / columns) * coarse.width);
        if (coarse.data[at] === 0) continue;
      }
      const scale = 1 / (n * LIGHT_UNIT);
      const r = sums[column * 3]! * scale;
      const g = sums[column * 3 + 1]! * scale;
      const v = sums[column * 3 + 2]! * scale;
      const light = r + g + v;
      if (light > 2.99) white++;
      else if (light < 0.0015) black++;
      const l = cubeRoot(lr * r + lg * g + lb * v);
      const m = cubeRoot(mr * r + mg * g + mb * v);
      const s = cubeRoot(sr * r + sg * g + sb * v);
      L[cell] = Ll * l + Lm * m + Ls * s;
      a[cell] = al * l + am * m + as * s;
      b[cell] = bl * l + bm * m + bs * s;
      looked[cell] = n;
      total += n;
      kept++;
    }
    this.total += total;
    this.kept += kept;
    this.white += white;
    this.black += black;
  }
}

/** Zeroed OKLab planes for `cells` cells. */
export const emptyPlanes = (cells: number) => ({
  L: new Float32Array(cells),
  a: new Float32Array(cells),
  b: new Float32Array(cells),
});

const emptyCells = (cells: number) => ({
  ...emptyPlanes(cells),
  pixelCounts: new Float32Array(cells),
});
