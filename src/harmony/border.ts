import type { FlatImage } from '../photo/flat.ts';

/**
 * How hard the borders between labels are. Where light alone changes, colour changes as much
 * beside a border between two labels as across it; where one thing ends and another begins, it
 * jumps there. So the squared step across is compared with the squared steps on both sides:
 * grain and even gradients are in both and fall out.
 */
export interface Borders {
  readonly count: number;
  /** Crossings between two labels, count × count, symmetric. */
  readonly crossings: Float64Array;
  /** Sum of squared steps across them, in OKLab. */
  readonly across: Float64Array;
  /** Sum of the mean squared steps beside them. */
  readonly beside: Float64Array;
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
  const crossings = new Float64Array(count * count);
  const across = new Float64Array(count * count);
  const beside = new Float64Array(count * count);
  const square = (p: number, q: number): number => {
    const dL = L[p]! - L[q]!;
    const da = a[p]! - a[q]!;
    const db = b[p]! - b[q]!;
    return dL * dL + da * da + db * db;
  };
  /** p, p + step: the two cells at the border; `before`, `after`: cells of the image there. */
  const cross = (p: number, step: number, before: number, after: number) => {
    const i = label[p]!;
    const j = label[p + step]!;
    if (i >= count || j >= count) return;
    const at = i < j ? i * count + j : j * count + i;
    const near = p - Math.min(REACH, before) * step;
    const far = p + step + Math.min(REACH, after) * step;
    let sides = 0;
    let n = 0;
    const span = 2 * REACH + 1;
    if (before >= REACH + span && label[near - span * step]! < count) {
      sides += square(near, near - span * step);
      n++;
    }
    if (after >= REACH + span && label[far + span * step]! < count) {
      sides += square(far, far + span * step);
      n++;
    }
    if (n === 0 || label[near]! >= count || label[far]! >= count) return;
    crossings[at]!++;
    across[at]! += square(near, far);
    beside[at]! += sides / n;
  };
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const p = y * width + x;
      if (x + 1 < width && label[p] !== label[p + 1]) cross(p, 1, x, width - 2 - x);
      if (y + 1 < height && label[p] !== label[p + width]) cross(p, width, y, height - 2 - y);
    }
  for (const table of [crossings, across, beside])
    for (let i = 0; i < count; i++)
      for (let j = 0; j < i; j++) table[i * count + j] = table[j * count + i]!;
  return { count, crossings, across, beside };
}

/** Cells on either side of a border between which its step is measured. */
const REACH = 2;
