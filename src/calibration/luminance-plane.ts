import { DECODE_8BIT, decode } from '../colour/rgb.ts';
import type { CardPhotograph } from './card-photograph.ts';

/** Linear luminance (0…1) of a photograph, downsampled by whole blocks; row-major. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
  /** Side of a block in pixels of the photograph. */
  readonly block: number;
}

let deep: Float64Array | undefined;

/** Lookup table of linear values for the encoded values of a picture (8 or 16 bit); shared. */
export function linearTable({ data }: CardPhotograph): Float64Array {
  if (!(data instanceof Uint16Array)) return DECODE_8BIT;
  deep ??= Float64Array.from({ length: 65536 }, (_, v) => decode(v / 65535));
  return deep;
}

/** Maximum number of blocks along a side: enough to find marks. */
const LONG_SIDE = 1400;

/**
 * Downsamples to block means, which reduces noise and gives marks a similar size in any photograph.
 */
export function planeOf(pixels: CardPhotograph): Plane {
  const { width, height, data } = pixels;
  const block = Math.max(1, Math.ceil(Math.max(width, height) / LONG_SIDE));
  const [columns, rows] = [Math.floor(width / block), Math.floor(height / block)];
  const light = linearTable(pixels);
  const values = new Float32Array(columns * rows);
  for (let y = 0; y < rows * block; y++) {
    const row = Math.floor(y / block) * columns;
    for (let x = 0; x < columns * block; x++) {
      const at = (y * width + x) * 4;
      values[row + Math.floor(x / block)]! +=
        0.2126 * light[data[at]!]! +
        0.7152 * light[data[at + 1]!]! +
        0.0722 * light[data[at + 2]!]!;
    }
  }
  const scale = 1 / (block * block);
  for (let i = 0; i < values.length; i++) values[i]! *= scale;
  return { width: columns, height: rows, values, block };
}

/** Box filter: mean over a square of half-side `r` around every cell, clipped at the edges. */
export function localMeans({ width, height, values }: Plane, r: number): Float32Array {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      row += values[y * width + x]!;
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1]! + row;
    }
  }
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const [top, bottom] = [Math.max(0, y - r), Math.min(height, y + r + 1)];
    for (let x = 0; x < width; x++) {
      const [left, right] = [Math.max(0, x - r), Math.min(width, x + r + 1)];
      const at = (row: number, column: number) => sums[row * (width + 1) + column]!;
      const sum = at(bottom, right) - at(top, right) - at(bottom, left) + at(top, left);
      out[y * width + x] = sum / ((bottom - top) * (right - left));
    }
  }
  return out;
}
