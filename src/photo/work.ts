import { type Matrix, product } from '../colour/matrix.ts';
import { CONES, OPPONENT } from '../colour/oklab.ts';
import { FROM_XYZ, type RgbSpace, TO_XYZ } from '../colour/rgb.ts';
import { Averaging, type CellRow, type CellRows, type Span, UNIT } from './average.ts';
import { cubeRoot } from './cuberoot.ts';
import type { Mask } from './mask.ts';
import type { Pixels } from './pixels.ts';

/**
 * The photograph averaged over small cells in linear light, in OKLab: small enough to look at
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
  readonly seen: Float32Array;
  /** All pixels that are looked at. */
  readonly pixels: number;
  /** Share of the looked-at cells that are clipped white or black in every channel. */
  readonly clipped: { readonly white: number; readonly black: number };
  /** Whether anything was opaque, rubbed out or not. */
  readonly opaque: boolean;
}

/** Cells of a work image, about; a photograph of fewer pixels keeps its own. */
const CELLS = 300_000;

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

/** Rows of pixels taken at a time, so that what is read is still at hand when it is summed. */
const STRIP = 64;

/**
 * One pass over all pixels: exact sums of linear light per cell, then OKLab of the averages.
 * Pixels less than half opaque are not looked at; a mask as large as the photograph is honoured
 * pixel by pixel, any other at the centre of each cell.
 * @returns undefined when `pause` stopped it
 * @throws RangeError when there are not width × height × 4 values
 */
export function workImage(pixels: Pixels, options: WorkOptions = {}): WorkImage | undefined {
  const { width, height, data, space } = pixels;
  if (data.length !== width * height * 4)
    throw new RangeError(`${width} × ${height} pixels need ${width * height * 4} values`);
  const making = new WorkMaking({ width, height, space }, options);
  for (let y = 0; y < height; y += STRIP) {
    if (options.pause?.(y / height)) return undefined;
    const rows = Math.min(STRIP, height - y);
    making.add(data.subarray(y * width * 4, (y + rows) * width * 4), rows);
  }
  return making.made();
}

/** Some rows of a work image: what one pass over their pixels finds, to be put together with the others. */
export interface WorkPart extends Pick<WorkImage, 'L' | 'a' | 'b' | 'seen' | 'opaque'> {
  readonly rows: Span;
  /** Pixels that are looked at. */
  readonly pixels: number;
  /** Cells that are looked at, and those of them that are clipped. */
  readonly kept: number;
  readonly white: number;
  readonly black: number;
}

/** A work image in the making, or some rows of one, from strips of pixels. */
export class WorkMaking implements CellRows {
  private readonly size: readonly [columns: number, rows: number];
  private readonly rows: Span;
  private readonly cells: Pick<WorkImage, 'L' | 'a' | 'b' | 'seen'>;
  private readonly averaging: Averaging;
  /** From the photograph's linear light to the cone signals of OKLab. */
  private readonly toCones: Matrix;
  /** A mask of another size than the photograph. */
  private readonly coarse: Mask | undefined;
  private total = 0;
  private kept = 0;
  private white = 0;
  private black = 0;
  private opaque = false;

  constructor(
    { width, height, space }: Pick<Pixels, 'width' | 'height' | 'space'>,
    { mask, adapt }: Pick<WorkOptions, 'mask' | 'adapt'> = {},
    part?: Span,
  ) {
    const [columns, rows] = workSize(width, height);
    this.size = [columns, rows];
    this.rows = part ?? { from: 0, to: rows };
    // Down to the last row, so that the parts below find their place in the first.
    this.cells = emptyCells(columns * (rows - this.rows.from));
    const toSrgb = toLinearSrgb(space, adapt);
    this.toCones = toSrgb ? product(CONES, toSrgb) : CONES;
    const isFine = mask !== undefined && mask.width === width && mask.height === height;
    this.coarse = isFine ? undefined : mask;
    this.averaging = new Averaging(
      { width, height, columns, rows, mask: isFine ? mask : undefined, part: this.rows },
      this,
    );
    // A mask pixel by pixel leaves out what it hides before it is known whether it is opaque.
    this.opaque = isFine;
  }

  /** Rows of pixels that it is to be given. */
  get lines(): Span {
    return this.averaging.lines;
  }

  /** Takes the next rows of pixels from the top; `bgrx`: blue first, and the fourth value means nothing. */
  add(data: Pixels['data'], rows: number, order: 'rgba' | 'bgrx' = 'rgba'): void {
    this.averaging.add(data, rows, order);
  }

  part(): WorkPart {
    const { rows, cells, total: pixels, kept, white, black, opaque } = this;
    const end = this.size[0] * (rows.to - rows.from);
    return {
      rows,
      L: cells.L.subarray(0, end),
      a: cells.a.subarray(0, end),
      b: cells.b.subarray(0, end),
      seen: cells.seen.subarray(0, end),
      pixels,
      kept,
      white,
      black,
      opaque,
    };
  }

  /** The whole: this, which begins with the first row, and the parts below it that others made. */
  made(others: readonly WorkPart[] = []): WorkImage {
    const parts = [this.part(), ...others];
    const [width, height] = this.size;
    const sum = (of: (part: WorkPart) => number) => parts.reduce((all, part) => all + of(part), 0);
    const kept = sum((part) => part.kept);
    const { cells } = this;
    for (const part of others)
      for (const key of ['L', 'a', 'b', 'seen'] as const)
        cells[key].set(part[key], part.rows.from * width);
    return {
      width,
      height,
      ...cells,
      pixels: sum((part) => part.pixels),
      clipped: {
        white: kept ? sum(({ white }) => white) / kept : 0,
        black: kept ? sum(({ black }) => black) / kept : 0,
      },
      opaque: parts.some((part) => part.opaque),
    };
  }

  /** Takes a row of cells, averaged: for the averaging alone. */
  finish(row: number, { sums, seen }: CellRow): void {
    const { coarse } = this;
    const { L, a, b, seen: looked } = this.cells;
    const [columns, rows] = this.size;
    const maskRow = coarse ? Math.floor(((row + 0.5) / rows) * coarse.height) * coarse.width : 0;
    const [[lr, lg, lb], [mr, mg, mb], [sr, sg, sb]] = this.toCones;
    const [[Ll, Lm, Ls], [al, am, as], [bl, bm, bs]] = OPPONENT;
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
      const scale = 1 / (n * UNIT);
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

/** OKLab planes of so many cells, to be filled in. */
export const emptyPlanes = (cells: number) => ({
  L: new Float32Array(cells),
  a: new Float32Array(cells),
  b: new Float32Array(cells),
});

const emptyCells = (cells: number) => ({ ...emptyPlanes(cells), seen: new Float32Array(cells) });
