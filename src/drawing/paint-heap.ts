import { drawingRandom, randomBetween } from './drawing-seed.ts';
import type { LitGrid } from './tone-map.ts';

/** Smoothstep from 0 to 1 for t from -1 to 1. */
const softStep = (t: number) => {
  const c = Math.min(1, Math.max(0, 0.5 + t / 2));
  return c * c * (3 - 2 * c);
};

/** Area of every heap's base, for radius 1. */
export const HEAP_AREA = 2.25;

/**
 * A lit heap of paint as a palette knife leaves it, seen from slightly above: a soft mound with a
 * few overlapping pulls of the blade, each flat, with a lip along both sides and a ridge where the
 * blade was lifted. About a circle of radius 1 round (0, 0).
 *
 * @param size points along each side of the grid
 */
export function heapSurface(seed: number, size = 33): LitGrid {
  const next = drawingRandom(seed);
  const wobble = Array.from({ length: 4 }, (_, k) => ({
    many: k + 2,
    much: randomBetween(next, 0.02, 0.075) / (1 + k * 0.4),
    turn: randomBetween(next, 0, 2 * Math.PI),
  }));
  const first = randomBetween(next, 0, 2 * Math.PI);
  const pulls = Array.from({ length: 2 }, (_, k) => {
    const way = first + k * randomBetween(next, 1.9, 2.7);
    return {
      x: Math.cos(way),
      y: Math.sin(way),
      off: randomBetween(next, -0.25, 0.25),
      bow: randomBetween(next, 0.25, 0.6) * (next() < 0.5 ? -1 : 1),
      half: randomBetween(next, 0.36, 0.5),
      end: randomBetween(next, 0.05, 0.4),
      high: randomBetween(next, 0.3, 0.38) + 0.06 * k,
      lift: randomBetween(next, 0.1, 0.24),
      comb: randomBetween(next, 15, 22),
      shift: randomBetween(next, 0, 6),
    };
  });
  const height = (x: number, y: number) => {
    const r2 = Math.min(1, x * x + y * y);
    const dome = (1 - r2 * r2) ** 0.7;
    let h = 0.5 * dome * (0.8 + 0.2 * Math.exp(-3 * r2));
    for (const pull of pulls) {
      const u = x * pull.x + y * pull.y;
      const side = -x * pull.y + y * pull.x - pull.off - pull.bow * u * u;
      const n = Math.abs(side);
      const along = softStep((pull.end - u) / 0.16);
      const within = softStep((pull.half - n) / 0.2) * along;
      const blade =
        (pull.high + pull.lift * u + 0.007 * Math.sin(pull.comb * side + pull.shift)) * dome;
      h += (blade - h) * within * 0.85;
      h += 0.05 * dome * along * Math.exp(-(((n - pull.half) / 0.11) ** 2));
      h +=
        0.09 *
        dome *
        Math.exp(-(((u - pull.end - 0.05) / 0.12) ** 2)) *
        softStep((pull.half * 0.9 - n) / 0.25);
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
      // Map the square grid onto the disc.
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
      sy[at] = y * edge * 0.8 - h * 0.42 + 0.1;
      light[at] = Math.max(0, (-0.5 * nx - 0.55 * ny + 0.67) / length);
    }
  }
  // Scale every heap to the same area round its own centroid, so that area shows amount.
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
