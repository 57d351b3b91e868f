import type { PointGrid } from './contour-lines.ts';

/** A closed polygon; simplification keeps its `fixed` points (1). */
export type Polygon = { readonly x: number[]; readonly y: number[]; readonly fixed: number[] };

/**
 * Simplifies a closed polygon: drops points within `slack` of the line without them, never fixed
 * ones (Douglas and Peucker, 1973).
 *
 * @returns indices of the points that stay, in order
 */
function simplify({ x, y, fixed }: Polygon, slack: number): number[] {
  const n = x.length;
  if (n < 4) return [...x.keys()];
  const keep = Uint8Array.from(fixed);
  let far = 0;
  let farthest = -1;
  for (let i = 1; i < n; i++) {
    const d = ((x[i] ?? 0) - (x[0] ?? 0)) ** 2 + ((y[i] ?? 0) - (y[0] ?? 0)) ** 2;
    if (d > farthest) {
      farthest = d;
      far = i;
    }
  }
  keep[0] = 1;
  keep[far] = 1;
  const spans: [number, number][] = [];
  let from = 0;
  for (let i = 1; i <= n; i++) {
    if (i < n && !keep[i]) continue;
    if (i > from + 1) spans.push([from, i]);
    from = i;
  }
  for (let span = spans.pop(); span; span = spans.pop()) {
    const [begin, end] = span;
    const ax = x[begin] ?? 0;
    const ay = y[begin] ?? 0;
    const bx = x[end % n] ?? 0;
    const by = y[end % n] ?? 0;
    const long = Math.hypot(bx - ax, by - ay);
    let worst = slack;
    let cut = -1;
    for (let i = begin + 1; i < end; i++) {
      const px = (x[i] ?? 0) - ax;
      const py = (y[i] ?? 0) - ay;
      const along = long > 0 ? (px * (bx - ax) + py * (by - ay)) / long : 0;
      const off =
        along < 0 || along > long || long === 0
          ? Math.min(Math.hypot(px, py), Math.hypot(px - (bx - ax), py - (by - ay)))
          : Math.abs(px * (by - ay) - py * (bx - ax)) / long;
      if (off > worst) {
        worst = off;
        cut = i;
      }
    }
    if (cut < 0) continue;
    keep[cut] = 1;
    if (cut > begin + 1) spans.push([begin, cut]);
    if (end > cut + 1) spans.push([cut, end]);
  }
  const kept: number[] = [];
  for (let i = 0; i < n; i++) if (keep[i]) kept.push(i);
  return kept;
}

/**
 * SVG path data of polygons, in tenths of a unit (draw under `scale(0.1)`), in relative
 * coordinates: half the size of absolute ones. Omits polygons too small to see.
 *
 * @param slack tolerance of the simplification, drawing units
 */
export function pathOf(loops: readonly Polygon[], slack: number): string {
  let d = '';
  for (const loop of loops) {
    const kept = simplify(loop, slack);
    if (kept.length < 3) continue;
    let area = 0;
    for (let k = 0; k < kept.length; k++) {
      const a = kept[k] ?? 0;
      const b = kept[(k + 1) % kept.length] ?? 0;
      area += (loop.x[a] ?? 0) * (loop.y[b] ?? 0) - (loop.x[b] ?? 0) * (loop.y[a] ?? 0);
    }
    if (Math.abs(area) < 4 * slack * slack) continue;
    let px = 0;
    let py = 0;
    for (const [k, i] of kept.entries()) {
      const qx = Math.round((loop.x[i] ?? 0) * 10);
      const qy = Math.round((loop.y[i] ?? 0) * 10);
      const down = qy - py;
      if (k === 0) d += `M${qx} ${qy}l`;
      else d += `${k > 1 && qx >= px ? ' ' : ''}${qx - px}${down < 0 ? '' : ' '}${down}`;
      px = qx;
      py = qy;
    }
    d += 'z';
  }
  return d;
}

/** Indices of the points along a sheet's border, once round. */
function borderIndices({ columns, rows }: PointGrid): number[] {
  const points: number[] = [];
  for (let i = 0; i < columns; i++) points.push(i);
  for (let j = 1; j < rows; j++) points.push(j * columns + columns - 1);
  for (let i = columns - 2; i >= 0; i--) points.push((rows - 1) * columns + i);
  for (let j = rows - 2; j > 0; j--) points.push(j * columns);
  return points;
}

/**
 * Border points that a simplified border keeps.
 *
 * @returns one flag for each point of the sheet, 1 to keep
 */
export function borderOf(sheet: PointGrid, slack: number): Uint8Array {
  const points = borderIndices(sheet);
  const loop = {
    x: points.map((at) => sheet.x[at] ?? 0),
    y: points.map((at) => sheet.y[at] ?? 0),
    fixed: points.map(() => 0),
  };
  const marks = new Uint8Array(sheet.columns * sheet.rows);
  for (const k of simplify(loop, slack)) marks[points[k] ?? 0] = 1;
  return marks;
}

/**
 * Path data of a sheet's outline, always in the same direction on the page.
 *
 * @param border from {@link borderOf}
 */
export function outline(sheet: PointGrid, border: Uint8Array): string {
  const points = borderIndices(sheet).filter((at) => border[at]);
  const loop: Polygon = {
    x: points.map((at) => sheet.x[at] ?? 0),
    y: points.map((at) => sheet.y[at] ?? 0),
    fixed: points.map(() => 1),
  };
  let area = 0;
  for (let k = 0; k < points.length; k++) {
    const m = (k + 1) % points.length;
    area += (loop.x[k] ?? 0) * (loop.y[m] ?? 0) - (loop.x[m] ?? 0) * (loop.y[k] ?? 0);
  }
  if (area < 0) {
    loop.x.reverse();
    loop.y.reverse();
  }
  return pathOf([loop], 0);
}
