import type { Polygon } from './polygon-path.ts';

/**
 * A grid of `columns` × `rows` points, row by row, with their positions on the page in drawing
 * units. The grid may be deformed in any way.
 */
export interface PointGrid {
  readonly columns: number;
  readonly rows: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/**
 * Closed contour lines round every region of a sheet where `value` ≥ `level`, along the sheet's
 * border where a region reaches it (marching squares; in the ambiguous case diagonal corners stay
 * separate). Outer loops all have one direction, holes the other.
 *
 * @param value one number for each point of the sheet
 * @param border from `borderOf`: border points that every line keeps. If lines kept different
 *   points, slivers of the tone below would show between them.
 */
export function contours(
  sheet: PointGrid,
  value: Float64Array,
  level: number,
  border?: Uint8Array,
): Polygon[] {
  const { columns, rows, x, y } = sheet;
  // A frame of outside points closes every loop along the border.
  const width = columns + 2;
  const height = rows + 2;
  const vertical = width * height;
  if (contourBuffers.inside.length < vertical) {
    contourBuffers.inside = new Uint8Array(vertical);
    contourBuffers.next = new Int32Array(2 * vertical).fill(-1);
  }
  const { inside, next } = contourBuffers;
  inside.fill(0, 0, vertical);
  for (let j = 0; j < rows; j++) {
    const from = j * columns;
    const to = (j + 1) * width + 1;
    for (let i = 0; i < columns; i++) inside[to + i] = (value[from + i] ?? 0) >= level ? 1 : 0;
  }
  const starts: number[] = [];
  for (let j = 0; j + 1 < height; j++) {
    for (let i = 0; i + 1 < width; i++) {
      const at = j * width + i;
      const cell =
        (inside[at] ?? 0) |
        ((inside[at + 1] ?? 0) << 1) |
        ((inside[at + width + 1] ?? 0) << 2) |
        ((inside[at + width] ?? 0) << 3);
      const ways = MARCHING_CASES[cell] ?? [];
      for (let k = 0; k < ways.length; k += 2) {
        const entry = crossingOf(ways[k] ?? 0, at, width, vertical);
        next[entry] = crossingOf(ways[k + 1] ?? 0, at, width, vertical);
        starts.push(entry);
      }
    }
  }
  const point = (crossing: number, loop: Polygon) => {
    const upright = crossing >= vertical;
    const first = upright ? crossing - vertical : crossing;
    const second = first + (upright ? width : 1);
    const index = (p: number) => {
      const i = Math.min(columns - 1, Math.max(0, (p % width) - 1));
      const j = Math.min(rows - 1, Math.max(0, Math.floor(p / width) - 1));
      return j * columns + i;
    };
    const a = index(first);
    const b = index(second);
    const va = value[a] ?? 0;
    const vb = value[b] ?? 0;
    // If one end lies in the frame, both ends are the same point of the sheet.
    if (a === b && border && !border[a]) return;
    loop.fixed.push(a === b ? 1 : 0);
    const t = a === b || va === vb ? 0 : (level - va) / (vb - va);
    const part = Math.min(1, Math.max(0, t));
    loop.x.push((x[a] ?? 0) + ((x[b] ?? 0) - (x[a] ?? 0)) * part);
    loop.y.push((y[a] ?? 0) + ((y[b] ?? 0) - (y[a] ?? 0)) * part);
  };
  const loops: Polygon[] = [];
  for (const start of starts) {
    if ((next[start] ?? -1) < 0) continue;
    const loop: Polygon = { x: [], y: [], fixed: [] };
    let at = start;
    while ((next[at] ?? -1) >= 0) {
      point(at, loop);
      const on = next[at] ?? -1;
      next[at] = -1;
      at = on;
    }
    loops.push(loop);
  }
  return loops;
}

/**
 * Scratch buffers, reused between calls: one cloth needs some hundred lines. `next` is left all -1.
 */
const contourBuffers = { inside: new Uint8Array(0), next: new Int32Array(0) };

/**
 * Marching squares table. For each of the 16 combinations of inside corners (clockwise from the
 * upper left, bits 1, 2, 4, 8): pairs of edges by which a line enters and leaves. Edges: 0 top, 1
 * right, 2 bottom, 3 left. Going round the cell, a line enters where outside turns to inside.
 */
const MARCHING_CASES: readonly (readonly number[])[] = Array.from({ length: 16 }, (_, cell) => {
  const lies = (corner: number) => (cell >> (corner % 4)) & 1;
  const ways: number[] = [];
  for (let edge = 0; edge < 4; edge++) {
    if (lies(edge) || !lies(edge + 1)) continue;
    for (let k = 1; k < 4; k++) {
      if (!lies(edge + k) || lies(edge + k + 1)) continue;
      ways.push(edge, (edge + k) % 4);
      break;
    }
  }
  return ways;
});

const crossingOf = (edge: number, at: number, width: number, vertical: number) =>
  edge === 0 ? at : edge === 1 ? vertical + at + 1 : edge === 2 ? at + width : vertical + at;
