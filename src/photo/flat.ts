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
  const mean = windows(work);
  const { spread } = mean;
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
      const left = x >= 2 ? i - 2 : i;
      const right = x + 2 < width ? i + 2 : i;
      // Its own window loses a near draw: else the rim of a thing would stay mixed.
      let best = i;
      let least = spread[i]! * 1.05;
      if (spread[left + up]! < least) {
        best = left + up;
        least = spread[best]!;
      }
      if (spread[right + up]! < least) {
        best = right + up;
        least = spread[best]!;
      }
      if (spread[left + down]! < least) {
        best = left + down;
        least = spread[best]!;
      }
      if (spread[right + down]! < least) best = right + down;
      out.L[i] = mean.L[best]!;
      out.a[i] = mean.a[best]!;
      out.b[i] = mean.b[best]!;
    }
  }
  return out;
}

/** Mean and variance of the 3 × 3 window round each cell, over what is looked at. */
function windows(work: WorkImage): FlatImage & { spread: Float32Array } {
  const { width, height, seen } = work;
  const cells = width * height;
  const L = new Float32Array(cells);
  const a = new Float32Array(cells);
  const b = new Float32Array(cells);
  const spread = new Float32Array(cells);
  // Sums of three columns, for three rows at a time: L, a, b, their squares, and how many.
  const ring = [0, 1, 2].map(() => new Float64Array(width * 5));
  for (let y = 0; y <= height; y++) {
    const next = ring[y % 3]!;
    if (y < height) sumColumns(work, y, next);
    else next.fill(0);
    if (y === 0) continue;
    const above = ring[(y + 1) % 3]!;
    const here = ring[(y + 2) % 3]!;
    let cell = (y - 1) * width;
    let n = 0;
    let per = 0;
    for (let at = 0; at < next.length; cell++, at += 5) {
      if (seen[cell] === 0) {
        spread[cell] = Infinity;
        continue;
      }
      const count = above[at + 4]! + here[at + 4]! + next[at + 4]!;
      // Nearly always nine: then nothing is divided.
      if (count !== n) {
        n = count;
        per = 1 / n;
      }
      const meanL = (above[at]! + here[at]! + next[at]!) * per;
      const meanA = (above[at + 1]! + here[at + 1]! + next[at + 1]!) * per;
      const meanB = (above[at + 2]! + here[at + 2]! + next[at + 2]!) * per;
      const squares = (above[at + 3]! + here[at + 3]! + next[at + 3]!) * per;
      L[cell] = meanL;
      a[cell] = meanA;
      b[cell] = meanB;
      spread[cell] = squares - (meanL * meanL + meanA * meanA + meanB * meanB);
    }
  }
  return { L, a, b, spread };
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
