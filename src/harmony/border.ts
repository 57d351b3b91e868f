import type { FlatImage } from '../photo/flat.ts';

/**
 * How hard the borders between labels are. Where light alone changes, colour changes as much
 * beside a border between two labels as across it; where one thing ends and another begins, it
 * jumps there. So the squared step across is compared with the squared steps on both sides:
 * grain and even gradients are in both and fall out.
 */
export interface Borders {
  readonly count: number;
  /** All places where two labels meet, count × count, symmetric. */
  readonly meetings: Float64Array;
  /** Those where both run on for two cells: the crossings that are measured. */
  readonly crossings: Float64Array;
  /** Sums of squared steps across them: of lightness, and of chroma that no change of light explains. */
  readonly acrossL: Float64Array;
  readonly acrossC: Float64Array;
  /** Sums of the mean squared steps beside them. */
  readonly besideL: Float64Array;
  readonly besideC: Float64Array;
  /**
   * Sums of the steps of a/L and b/L from the first label to the second, less those beside the
   * border, times the darker L. Grain has no direction and falls out. Antisymmetric.
   */
  readonly turnA: Float64Array;
  readonly turnB: Float64Array;
}

/** @param label of each cell, `count` or more where none */
export function borders(
  image: FlatImage,
  width: number,
  height: number,
  label: ArrayLike<number>,
  count: number,
): Borders {
  const { L, a, b } = image;
  const meetings = new Float64Array(count * count);
  const crossings = new Float64Array(count * count);
  const acrossL = new Float64Array(count * count);
  const acrossC = new Float64Array(count * count);
  const besideL = new Float64Array(count * count);
  const besideC = new Float64Array(count * count);
  const turnA = new Float64Array(count * count);
  const turnB = new Float64Array(count * count);
  const light = (p: number, q: number): number => (L[p]! - L[q]!) ** 2;
  // a/L and b/L are the same in light and shadow; times the darker L, so that grain stays grain.
  let da = 0;
  let db = 0;
  const hue = (p: number, q: number): number => {
    const [lp, lq] = [Math.max(0.02, L[p]!), Math.max(0.02, L[q]!)];
    const low = Math.min(lp, lq);
    da = (a[q]! / lq - a[p]! / lp) * low;
    db = (b[q]! / lq - b[p]! / lp) * low;
    return da * da + db * db;
  };
  /** p, p + step: the two cells at the border; `before`, `after`: cells of the image there. */
  const cross = (p: number, step: number, before: number, after: number) => {
    const i = label[p]!;
    const j = label[p + step]!;
    if (i >= count || j >= count) return;
    const at = i < j ? i * count + j : j * count + i;
    meetings[at]!++;
    // A lone cell of grain is no border: both labels must run on for two cells.
    if (before > 0 && label[p - step] !== i) return;
    if (after > 0 && label[p + 2 * step] !== j) return;
    const near = p - Math.min(REACH, before) * step;
    const far = p + step + Math.min(REACH, after) * step;
    let sidesL = 0;
    let sidesC = 0;
    let sidesA = 0;
    let sidesB = 0;
    let n = 0;
    const span = 2 * REACH + 1;
    if (before >= REACH + span && label[near - span * step]! < count) {
      sidesL += light(near - span * step, near);
      sidesC += hue(near - span * step, near);
      sidesA += da;
      sidesB += db;
      n++;
    }
    if (after >= REACH + span && label[far + span * step]! < count) {
      sidesL += light(far, far + span * step);
      sidesC += hue(far, far + span * step);
      sidesA += da;
      sidesB += db;
      n++;
    }
    if (n === 0 || label[near]! >= count || label[far]! >= count) return;
    crossings[at]!++;
    acrossL[at]! += light(near, far);
    acrossC[at]! += hue(near, far);
    besideL[at]! += sidesL / n;
    besideC[at]! += sidesC / n;
    const way = i < j ? 1 : -1;
    turnA[at]! += way * (da - sidesA / n);
    turnB[at]! += way * (db - sidesB / n);
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const p = y * width + x;
      if (x + 1 < width && label[p] !== label[p + 1]) cross(p, 1, x, width - 2 - x);
      if (y + 1 < height && label[p] !== label[p + width]) cross(p, width, y, height - 2 - y);
    }
  for (const table of [meetings, crossings, acrossL, acrossC, besideL, besideC])
    for (let i = 0; i < count; i++)
      for (let j = 0; j < i; j++) table[i * count + j] = table[j * count + i]!;
  for (const table of [turnA, turnB])
    for (let i = 0; i < count; i++)
      for (let j = 0; j < i; j++) table[i * count + j] = -table[j * count + i]!;
  return { count, meetings, crossings, acrossL, acrossC, besideL, besideC, turnA, turnB };
}

/** Cells on either side of a border between which its step is measured. */
const REACH = 2;
