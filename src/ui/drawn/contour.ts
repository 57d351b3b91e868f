/**
 * A sheet of points: a grid of `columns` × `rows` (row after row) with a place on the page and a
 * depth of shade for each point. The grid may be bent as it likes on the page.
 */
export interface Sheet {
  readonly columns: number;
  readonly rows: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** A closed line; `fixed` points may not be left out when it is simplified. */
type Loop = { readonly x: number[]; readonly y: number[]; readonly fixed: number[] };

/**
 * The closed lines around every part of a sheet where `value` is at least `level`, along the
 * sheet's own border where that part reaches it (marching squares, the two-cornered cell keeping
 * its corners apart). All loops run the same way round, holes the other way.
 *
 * @param value one number a point of the sheet
 * @param border from `borderOf`: which points of the border every line along it keeps. Lines that
 *   kept different ones would let slivers of the tone below show between them.
 */
export function contours(
  sheet: Sheet,
  value: Float64Array,
  level: number,
  border?: Uint8Array,
): Loop[] {
  const { columns, rows, x, y } = sheet;
  const width = columns + 2;
  const height = rows + 2;
  // A frame of points that are never inside closes every loop along the border.
  const inside = new Uint8Array(width * height);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      if ((value[j * columns + i] ?? 0) >= level) inside[(j + 1) * width + i + 1] = 1;
    }
  }
  const vertical = width * height;
  const next = new Int32Array(2 * vertical).fill(-1);
  const corner = [0, 0, 0, 0];
  const edge = [0, 0, 0, 0];
  for (let j = 0; j + 1 < height; j++) {
    for (let i = 0; i + 1 < width; i++) {
      const at = j * width + i;
      corner[0] = inside[at] ?? 0;
      corner[1] = inside[at + 1] ?? 0;
      corner[2] = inside[at + width + 1] ?? 0;
      corner[3] = inside[at + width] ?? 0;
      const sum = (corner[0] ?? 0) + (corner[1] ?? 0) + (corner[2] ?? 0) + (corner[3] ?? 0);
      if (sum === 0 || sum === 4) continue;
      edge[0] = at;
      edge[1] = vertical + at + 1;
      edge[2] = at + width;
      edge[3] = vertical + at;
      for (let e = 0; e < 4; e++) {
        if (corner[e] || !corner[(e + 1) % 4]) continue;
        for (let k = 1; k < 4; k++) {
          const f = (e + k) % 4;
          if (corner[f] && !corner[(f + 1) % 4]) {
            next[edge[e] ?? 0] = edge[f] ?? 0;
            break;
          }
        }
      }
    }
  }
  const point = (crossing: number, loop: Loop) => {
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
    // Where one end lies in the frame both ends are the same point of the sheet.
    if (a === b && border && !border[a]) return;
    loop.fixed.push(a === b ? 1 : 0);
    const t = a === b || va === vb ? 0 : (level - va) / (vb - va);
    const part = Math.min(1, Math.max(0, t));
    loop.x.push((x[a] ?? 0) + ((x[b] ?? 0) - (x[a] ?? 0)) * part);
    loop.y.push((y[a] ?? 0) + ((y[b] ?? 0) - (y[a] ?? 0)) * part);
  };
  const loops: Loop[] = [];
  for (let start = 0; start < next.length; start++) {
    if ((next[start] ?? -1) < 0) continue;
    const loop: Loop = { x: [], y: [], fixed: [] };
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
 * Drops the points of a closed line that lie within `slack` of the line without them (Douglas and
 * Peucker 1973), never the fixed ones. Returns the indices kept.
 */
function simplify({ x, y, fixed }: Loop, slack: number): number[] {
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
 * SVG path data of closed loops, in tenths of a unit (draw it under `scale(0.1)`), each point
 * told from the one before: half the weight of plain figures. Loops too small to see are left out.
 */
export function pathOf(loops: readonly Loop[], slack: number): string {
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

/** The points along a sheet's border, once round, as indices into its grid. */
function rim({ columns, rows }: Sheet): number[] {
  const points: number[] = [];
  for (let i = 0; i < columns; i++) points.push(i);
  for (let j = 1; j < rows; j++) points.push(j * columns + columns - 1);
  for (let i = columns - 2; i >= 0; i--) points.push((rows - 1) * columns + i);
  for (let j = rows - 2; j > 0; j--) points.push(j * columns);
  return points;
}

/** Marks the points of the border that a line along it needs to stay within `slack` of it. */
export function borderOf(sheet: Sheet, slack: number): Uint8Array {
  const points = rim(sheet);
  const loop = {
    x: points.map((at) => sheet.x[at] ?? 0),
    y: points.map((at) => sheet.y[at] ?? 0),
    fixed: points.map(() => 0),
  };
  const marks = new Uint8Array(sheet.columns * sheet.rows);
  for (const k of simplify(loop, slack)) marks[points[k] ?? 0] = 1;
  return marks;
}

/** The outline of a whole sheet, always the same way round on the page. */
export function outline(sheet: Sheet, border: Uint8Array): string {
  const points = rim(sheet).filter((at) => border[at]);
  const loop: Loop = {
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
