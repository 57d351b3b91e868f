import type { Box } from './label-text.ts';

/** The wooden palette without its piles: outline, thumb hole, and lines for piles, px. */
export interface BoardOutline {
  readonly width: number;
  readonly height: number;
  readonly outline: string;
  readonly hole: {
    readonly x: number;
    readonly y: number;
    readonly rx: number;
    readonly ry: number;
  };
  /** Whether a point lies on the wood, at least `inset` from its edge; ignores the hole. */
  readonly holds: (x: number, y: number, inset: number) => boolean;
  /**
   * Point on the line of seats, `inset` from the edge: way 0 beside the hole, over the top, to 1 at
   * the far side.
   */
  readonly seat: (way: number, inset: number) => { readonly x: number; readonly y: number };
  /** Left and right end of the wood at height y, `inset` from the edge. */
  readonly chord: (y: number, inset: number) => readonly [number, number];
}

export type BoardShape = 'oval' | 'square';

/**
 * The board with its thumb hole at the left; `layPalette` mirrors it for the other hand. Sizes in
 * px.
 */
export function boardOutline(shape: BoardShape, width: number, height: number): BoardOutline {
  const tall = height > width;
  const hole = {
    x: width * (tall ? 0.155 : 0.13),
    y: height * (tall ? 0.6 : 0.6),
    rx: Math.max(17, width * 0.036),
    ry: Math.max(14, width * 0.03),
  };
  return shape === 'oval' ? oval(width, height, hole) : square(width, height, hole);
}

function oval(width: number, height: number, hole: BoardOutline['hole']): BoardOutline {
  const cx = width / 2;
  const cy = height / 2;
  const a = width / 2 - 6;
  const b = height / 2 - 6;
  const power = 2.6;
  const dent = (angle: number) => {
    const off = Math.atan2(Math.sin(angle - 2.28), Math.cos(angle - 2.28));
    return (
      1 - 0.13 * Math.exp(-((off / 0.26) ** 2)) + 0.012 * Math.exp(-(((off + 0.5) / 0.3) ** 2))
    );
  };
  const at = (angle: number, inset: number) => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const round = dent(angle);
    return {
      x: cx + (a - inset) * round * Math.sign(c) * Math.abs(c) ** (2 / power),
      y: cy + (b - inset) * round * Math.sign(s) * Math.abs(s) ** (2 / power),
    };
  };
  const points = Array.from({ length: 96 }, (_, k) => at((2 * Math.PI * k) / 96, 0));
  return {
    width,
    height,
    hole,
    outline: smoothLoop(points),
    holds: (x, y, inset) => {
      const u = (x - cx) / (a - inset);
      const v = (y - cy) / (b - inset);
      const c = Math.sign(u) * Math.abs(u) ** (power / 2);
      const s = Math.sign(v) * Math.abs(v) ** (power / 2);
      return Math.hypot(c, s) <= dent(Math.atan2(s, c)) ** (power / 2);
    },
    seat: byArcLength((way, inset) => at(Math.PI * (1.015 + 1.06 * way), inset)),
    chord: (y, inset) => {
      const v = Math.min(1, Math.abs((y - cy) / (b - inset)));
      const half = (a - inset) * Math.max(0, 1 - v ** power) ** (1 / power);
      return [cx - half, cx + half];
    },
  };
}

function square(width: number, height: number, hole: BoardOutline['hole']): BoardOutline {
  const edge = 6;
  const r = Math.min(22, width * 0.04);
  const left = edge;
  const right = width - edge;
  const top = edge;
  const bottom = height - edge;
  const bite = { x: width * 0.24, wide: width * 0.1, deep: height * 0.07 };
  const outline = [
    `M${left + r} ${top}H${right - r}Q${right} ${top} ${right} ${top + r}V${bottom - r}`,
    `Q${right} ${bottom} ${right - r} ${bottom}H${bite.x + bite.wide}`,
    `C${bite.x + bite.wide * 0.5} ${bottom} ${bite.x + bite.wide * 0.6} ${bottom - bite.deep} ${bite.x} ${bottom - bite.deep}`,
    `S${bite.x - bite.wide * 0.5} ${bottom} ${bite.x - bite.wide} ${bottom}`,
    `H${left + r}Q${left} ${bottom} ${left} ${bottom - r}V${top + r}Q${left} ${top} ${left + r} ${top}Z`,
  ].join('');
  const line = (way: number, inset: number) => {
    const x0 = left + inset;
    const x1 = right - inset;
    const y0 = top + inset;
    const low = hole.y - hole.ry - inset * 0.9;
    const far = height * 0.66;
    const up = Math.max(0, low - y0);
    const over = x1 - x0;
    const down = Math.max(0, far - y0);
    const gone = way * (up + over + down);
    if (gone <= up) return { x: x0, y: low - gone };
    if (gone <= up + over) return { x: x0 + gone - up, y: y0 };
    return { x: x1, y: y0 + gone - up - over };
  };
  return {
    width,
    height,
    hole,
    outline,
    holds: (x, y, inset) =>
      x >= left + inset &&
      x <= right - inset &&
      y >= top + inset &&
      y <= bottom - inset - (Math.abs(x - bite.x) < bite.wide ? bite.deep : 0),
    seat: line,
    chord: (y, inset) => [
      y + inset > bottom - bite.deep ? bite.x + bite.wide + inset * 0.5 : left + inset,
      right - inset,
    ],
  };
}

/** Reparametrises a line by arc length. */
function byArcLength(line: BoardOutline['seat']): BoardOutline['seat'] {
  return (way, inset) => {
    const steps = 80;
    const gone = [0];
    let last = line(0, inset);
    for (let k = 1; k <= steps; k++) {
      const here = line(k / steps, inset);
      gone.push((gone.at(-1) ?? 0) + Math.hypot(here.x - last.x, here.y - last.y));
      last = here;
    }
    const aim = way * (gone.at(-1) ?? 0);
    const k = Math.max(
      1,
      gone.findIndex((g) => g >= aim - 1e-9),
    );
    const from = gone[k - 1] ?? 0;
    const part = (aim - from) / ((gone[k] ?? 1) - from || 1);
    return line((k - 1 + part) / steps, inset);
  };
}

function smoothLoop(points: readonly { x: number; y: number }[]): string {
  const n = points.length;
  const mid = (k: number) => {
    const p = points[k % n] ?? { x: 0, y: 0 };
    const q = points[(k + 1) % n] ?? { x: 0, y: 0 };
    return `${((p.x + q.x) / 2).toFixed(1)} ${((p.y + q.y) / 2).toFixed(1)}`;
  };
  let d = `M${mid(0)}`;
  for (let k = 1; k <= n; k++) {
    const p = points[k % n] ?? { x: 0, y: 0 };
    d += `Q${p.x.toFixed(1)} ${p.y.toFixed(1)} ${mid(k)}`;
  }
  return `${d}Z`;
}

/** Box round a centre. @param rx, ry half its width and height */
export const boxOf = (x: number, y: number, rx: number, ry = rx): Box => ({
  left: x - rx,
  right: x + rx,
  top: y - ry,
  bottom: y + ry,
});
