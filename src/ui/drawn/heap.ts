import { between, chance } from './seed.ts';
import type { LitSheet } from './tone.ts';

/** What the foot of every heap covers, in squares of its radius. */
export const HEAP_AREA = 2.25;

/**
 * A heap of paint scooped together by a palette knife, seen from slightly above: a mound with a
 * few flat cuts, each leaving a burr along its edge. Fills a circle of radius 1 round 0, 0, its
 * top rising a little out of it.
 */
export function heap(seed: number, size = 25): LitSheet {
  const next = chance(seed);
  const wobble = Array.from({ length: 4 }, (_, k) => ({
    many: k + 2,
    much: between(next, 0.02, 0.09) / (1 + k * 0.5),
    turn: between(next, 0, 2 * Math.PI),
  }));
  const cuts = Array.from({ length: 3 }, () => {
    const way = between(next, 0, 2 * Math.PI);
    return {
      x: Math.cos(way),
      y: Math.sin(way),
      fall: between(next, 0.35, 0.85),
      high: between(next, 0.3, 0.52),
    };
  });
  const peak = { x: between(next, -0.18, 0.18), y: between(next, -0.2, 0.1) };
  const height = (x: number, y: number) => {
    const r = Math.hypot(x, y);
    const d = Math.hypot(x - peak.x * (1 - r), y - peak.y * (1 - r));
    let h = 0.62 * Math.sqrt(Math.max(0, 1 - r * r)) * (0.45 + 0.55 * Math.exp(-2.2 * d * d));
    for (const cut of cuts) {
      const plane = cut.high - cut.fall * (x * cut.x + y * cut.y - 0.12);
      const over = h - plane;
      if (over > 0) h = plane + 0.12 * over;
      h += 0.045 * Math.exp(-((over / 0.07) ** 2)) * Math.min(1, h * 4);
    }
    return h;
  };
  const total = size * size;
  const sx = new Float64Array(total);
  const sy = new Float64Array(total);
  const light = new Float64Array(total);
  for (let j = 0; j < size; j++) {
    for (let i = 0; i < size; i++) {
      const u = (2 * i) / (size - 1) - 1;
      const v = (2 * j) / (size - 1) - 1;
      // The square laid onto the disc, edge upon edge.
      const x = u * Math.sqrt(1 - (v * v) / 2);
      const y = v * Math.sqrt(1 - (u * u) / 2);
      const angle = Math.atan2(y, x);
      const edge = wobble.reduce((sum, w) => sum + w.much * Math.cos(w.many * angle + w.turn), 1);
      const h = height(x, y);
      const e = 0.03;
      const nx = -(height(x + e, y) - height(x - e, y)) / (2 * e);
      const ny = -(height(x, y + e) - height(x, y - e)) / (2 * e);
      const length = Math.hypot(nx, ny, 1);
      const at = j * size + i;
      sx[at] = x * edge;
      sy[at] = y * edge * 0.78 - h * 0.5 + 0.12;
      light[at] = Math.max(0, (-0.5 * nx - 0.55 * ny + 0.67) / length);
    }
  }
  // Every heap covers the same area round its own middle, or its size would not tell its amount.
  let area = 0;
  let mx = 0;
  let my = 0;
  const edge: number[] = [];
  for (let k = 0; k < size - 1; k++) edge.push(k);
  for (let k = 0; k < size - 1; k++) edge.push(k * size + size - 1);
  for (let k = size - 1; k > 0; k--) edge.push((size - 1) * size + k);
  for (let k = size - 1; k > 0; k--) edge.push(k * size);
  for (const [k, a] of edge.entries()) {
    const b = edge[(k + 1) % edge.length] ?? 0;
    const cross = (sx[a] ?? 0) * (sy[b] ?? 0) - (sx[b] ?? 0) * (sy[a] ?? 0);
    area += cross / 2;
    mx += (cross * ((sx[a] ?? 0) + (sx[b] ?? 0))) / 6;
    my += (cross * ((sy[a] ?? 0) + (sy[b] ?? 0))) / 6;
  }
  const scale = Math.sqrt(HEAP_AREA / Math.abs(area));
  return {
    columns: size,
    rows: size,
    x: sx.map((v) => (v - mx / area) * scale),
    y: sy.map((v) => (v - my / area) * scale),
    light,
  };
}
