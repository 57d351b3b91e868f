import type { WorkImage } from './work.ts';

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
  const cells = width * height;
  const count = boxSum(
    Float32Array.from(seen, (n) => (n ? 1 : 0)),
    width,
    height,
  );
  const planes = [work.L, work.a, work.b].map((plane) => boxSum(plane, width, height));
  const squares = new Float32Array(cells);
  for (let i = 0; i < cells; i++)
    squares[i] = work.L[i]! * work.L[i]! + work.a[i]! * work.a[i]! + work.b[i]! * work.b[i]!;
  const spread = boxSum(squares, width, height);
  const [mL, ma, mb] = planes as [Float32Array, Float32Array, Float32Array];
  for (let i = 0; i < cells; i++) {
    const n = count[i]!;
    if (n === 0) {
      spread[i] = Infinity;
      continue;
    }
    const [L, a, b] = [mL[i]! / n, ma[i]! / n, mb[i]! / n];
    mL[i] = L;
    ma[i] = a;
    mb[i] = b;
    spread[i] = spread[i]! / n - (L * L + a * a + b * b);
  }
  const out: FlatImage = {
    L: new Float32Array(cells),
    a: new Float32Array(cells),
    b: new Float32Array(cells),
  };
  for (let y = 0; y < height; y++) {
    const up = y >= 2 ? -2 * width : 0;
    const down = y + 2 < height ? 2 * width : 0;
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (seen[i] === 0) continue;
      const left = x >= 2 ? -2 : 0;
      const right = x + 2 < width ? 2 : 0;
      let best = i;
      // Its own window only where it is clearly calmer: else the rim of a thing would stay mixed.
      let least = spread[i]! * 1.05;
      let at = i + up + left;
      if (spread[at]! < least) {
        best = at;
        least = spread[at]!;
      }
      at = i + up + right;
      if (spread[at]! < least) {
        best = at;
        least = spread[at]!;
      }
      at = i + down + left;
      if (spread[at]! < least) {
        best = at;
        least = spread[at]!;
      }
      at = i + down + right;
      if (spread[at]! < least) best = at;
      out.L[i] = mL[best]!;
      out.a[i] = ma[best]!;
      out.b[i] = mb[best]!;
    }
  }
  return out;
}

/** Sums over 3 × 3 windows, cut at the image's edge. */
function boxSum(from: Float32Array, width: number, height: number): Float32Array {
  const rows = new Float32Array(from.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    const end = start + width;
    for (let i = start; i < end; i++)
      rows[i] = from[i]! + (i > start ? from[i - 1]! : 0) + (i + 1 < end ? from[i + 1]! : 0);
  }
  const out = new Float32Array(from.length);
  for (let y = 0; y < height; y++)
    for (let i = y * width; i < (y + 1) * width; i++)
      out[i] = rows[i]! + (y > 0 ? rows[i - width]! : 0) + (y + 1 < height ? rows[i + width]! : 0);
  return out;
}
