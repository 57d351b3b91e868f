import type { WorkImage } from '../photo/work.ts';

/**
 * How hard the borders between labels are. Across each border the step of colour is measured over
 * a few cells, along the line between the two labels' colours: 0 where the colour runs on softly,
 * 1 where it jumps from one to the other within the stride.
 */
export interface Borders {
  readonly count: number;
  /** Crossings between two labels, count × count, symmetric. */
  readonly crossings: Float64Array;
  /** Sum of the hardness of those crossings. */
  readonly hardness: Float64Array;
}

/** Cells on either side of a border between which its step is measured. */
const STRIDE = 3;

/** @param label of each cell, 255 or more than `count` where none */
export function borders(
  work: WorkImage,
  label: ArrayLike<number>,
  count: number,
  centre: { readonly L: ArrayLike<number>; readonly a: ArrayLike<number>; b: ArrayLike<number> },
): Borders {
  const { width, height, L, a, b, seen } = work;
  const crossings = new Float64Array(count * count);
  const hardness = new Float64Array(count * count);
  const cross = (p: number, q: number, before: number, after: number) => {
    const i = label[p]!;
    const j = label[q]!;
    if (i === j || i >= count || j >= count) return;
    const u = seen[before] ? before : p;
    const v = seen[after] ? after : q;
    const dL = centre.L[j]! - centre.L[i]!;
    const da = centre.a[j]! - centre.a[i]!;
    const db = centre.b[j]! - centre.b[i]!;
    const size = dL * dL + da * da + db * db;
    const step = ((L[v]! - L[u]!) * dL + (a[v]! - a[u]!) * da + (b[v]! - b[u]!) * db) / size;
    const at = i < j ? i * count + j : j * count + i;
    crossings[at]!++;
    hardness[at]! += Math.max(-1, Math.min(1.5, step));
  };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x;
      if (x + 1 < width && label[p] !== label[p + 1])
        cross(p, p + 1, p - Math.min(STRIDE, x), p + 1 + Math.min(STRIDE, width - 2 - x));
      if (y + 1 < height && label[p] !== label[p + width])
        cross(
          p,
          p + width,
          p - width * Math.min(STRIDE, y),
          p + width + width * Math.min(STRIDE, height - 2 - y),
        );
    }
  }
  for (let i = 0; i < count; i++)
    for (let j = 0; j < i; j++) {
      crossings[i * count + j] = crossings[j * count + i]!;
      hardness[i * count + j] = hardness[j * count + i]!;
    }
  return { count, crossings, hardness };
}
