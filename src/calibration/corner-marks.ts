import { localMeans, type Plane } from './luminance-plane.ts';
import { MARK_MM } from './swatch-card.ts';

/** A corner mark in a photograph, in its pixels. */
export interface Mark {
  readonly x: number;
  readonly y: number;
  /** Mean radius of its ring's outer edge. */
  readonly radius: number;
  /** Whether it has a pupil: the card's first mark. */
  readonly pupil: boolean;
  /** Difference between ring and eye or paper (the darker one), as a share of the paper. */
  readonly contrast: number;
}

/** Thresholds of darkness relative to the local mean, tried in this order. */
const DARK = [0.5, 0.35, 0.65];

/** Finds ring-shaped marks on lighter ground, highest contrast first; may include false ones. */
export function findMarks(plane: Plane): Mark[] {
  const found: Mark[] = [];
  const r = Math.round(Math.max(plane.width, plane.height) / 14);
  const means = localMeans(plane, r);
  for (const share of DARK) {
    for (const blob of blobs(plane, means, share)) {
      const mark = asMark(plane, blob);
      if (mark === null) continue;
      const twice = found.some((m) => Math.hypot(m.x - mark.x, m.y - mark.y) < m.radius);
      if (!twice) found.push(mark);
    }
    if (found.length >= 4) break;
  }
  return found.sort((p, q) => q.contrast - p.contrast);
}

/** A dark connected component: area, centroid and central second moments, in cells of the plane. */
interface Blob {
  readonly area: number;
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

function blobs({ width, height, values }: Plane, means: Float32Array, share: number): Blob[] {
  const dark = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i++) dark[i] = values[i]! < share * means[i]! ? 1 : 0;
  const out: Blob[] = [];
  const stack: number[] = [];
  for (let start = 0; start < dark.length; start++) {
    if (dark[start] === 0) continue;
    dark[start] = 0;
    stack.push(start);
    let [n, sx, sy, sxx, sxy, syy] = [0, 0, 0, 0, 0, 0];
    while (stack.length > 0) {
      const at = stack.pop()!;
      const x = at % width;
      const y = (at - x) / width;
      n++;
      sx += x;
      sy += y;
      sxx += x * x;
      sxy += x * y;
      syy += y * y;
      if (x > 0) visit(at - 1);
      if (x < width - 1) visit(at + 1);
      if (y > 0) visit(at - width);
      if (y < height - 1) visit(at + width);
    }
    const [x, y] = [sx / n, sy / n];
    out.push({ area: n, x, y, xx: sxx / n - x * x, xy: sxy / n - x * y, yy: syy / n - y * y });
  }
  return out;

  function visit(next: number): void {
    if (dark[next] === 0) return;
    dark[next] = 0;
    stack.push(next);
  }
}

/** Area of the eye as a share of the ring's disc. */
const HOLE = (MARK_MM.eye / MARK_MM.outer) ** 2;
/** In cells. */
const LEAST_AREA = 45;
const DIRECTIONS = 32;

/**
 * Checks whether a blob is a mark; null if not. The ellipse follows from the second moments, which
 * are (1 + h) ÷ 4 of the squared half-axes for a ring whose hole takes the share h of its disc.
 * Then samples along the ellipse must be dark in the ring and light in the eye and outside.
 */
function asMark({ width, height, values, block }: Plane, blob: Blob): Mark | null {
  const { area, x, y, xx, xy, yy } = blob;
  if (area < LEAST_AREA) return null;
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 0)) return null;
  const fill = area / (4 * Math.PI * Math.sqrt(determinant));
  const expected = (1 - HOLE) / (1 + HOLE);
  if (fill < 0.72 * expected || fill > 1.35 * expected) return null;
  // Half-axes from the eigenvalues of the moments; at 45 degrees of tilt their ratio is within 1 :
  // 2.
  const middle = (xx + yy) / 2;
  const half = Math.sqrt(((xx - yy) / 2) ** 2 + xy * xy);
  if (middle - half < 0.2 * (middle + half)) return null;
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const a = 2 * Math.sqrt((middle + half) / (1 + HOLE));
  const b = 2 * Math.sqrt((middle - half) / (1 + HOLE));
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const light = (radius: number, turn: number): number => {
    const [u, v] = [radius * a * Math.cos(turn), radius * b * Math.sin(turn)];
    const column = Math.round(x + u * cos - v * sin);
    const row = Math.round(y + u * sin + v * cos);
    if (column < 0 || row < 0 || column >= width || row >= height) return Number.NaN;
    return values[row * width + column]!;
  };
  const along = (radius: number): number[] =>
    Array.from({ length: DIRECTIONS }, (_, k) => light(radius, (2 * Math.PI * k) / DIRECTIONS));
  const ring = along((MARK_MM.outer + MARK_MM.eye) / 2 / MARK_MM.outer);
  const eye = along((MARK_MM.eye + MARK_MM.pupil) / 2 / MARK_MM.outer);
  const paper = along(1.3);
  if (![...ring, ...paper].every(Number.isFinite)) return null;
  const [inRing, inEye, outside] = [mean(ring), mean(eye), mean(paper)];
  const lightSide = Math.min(inEye, outside);
  const threshold = (inRing + lightSide) / 2;
  if (!(inRing < 0.45 * outside && lightSide > 0.5 * Math.max(inEye, outside))) return null;
  const wrong =
    ring.filter((v) => v > threshold).length +
    [...eye, ...paper].filter((v) => v < threshold).length;
  if (wrong > 0.08 * 3 * DIRECTIONS) return null;
  const centre = mean([light(0, 0), ...along(0.1)]);
  return {
    x: (x + 0.5) * block,
    y: (y + 0.5) * block,
    radius: Math.sqrt(a * b) * block,
    pupil: centre < (inRing + inEye) / 2,
    contrast: (lightSide - inRing) / outside,
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, v) => sum + v, 0) / values.length;
