/** Weighted points in a space with a uniform metric. */
export interface Points {
  readonly weight: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

interface Box {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  readonly mean: readonly [number, number, number];
  /** Principal axis (largest variance), and the variance along it. */
  readonly axis: readonly [number, number, number];
  readonly variance: number;
}

/** The result of the splitting. */
interface SplitBoxes {
  readonly count: number;
  /** Weighted mean of each box. */
  readonly centres: readonly (readonly [number, number, number])[];
  /** Box of each point. */
  readonly ofPoint: Uint16Array;
}

/**
 * Divisive clustering: repeatedly cuts the box with the largest weight × variance through its mean,
 * perpendicular to its principal axis, until there are `k`. A little grain moves the cuts a little;
 * farthest-point seeding would jump.
 * @returns at most k boxes
 * @see X. Wu, ACM Trans. Graph. 11 (1992) 348, for cutting by variance (reference from memory)
 */
export function splitByVariance(points: Points, k: number): SplitBoxes {
  const order = Int32Array.from(points.weight, (_, i) => i);
  const room = new Int32Array(order.length);
  const boxes: Box[] = [measured(points, order, 0, order.length)];
  while (boxes.length < k) {
    let at = 0;
    for (let i = 1; i < boxes.length; i++)
      if (boxes[i]!.weight * boxes[i]!.variance > boxes[at]!.weight * boxes[at]!.variance) at = i;
    const box = boxes[at]!;
    if (!(box.weight * box.variance > 1e-12)) break;
    const middle = part(points, order, box, room);
    if (middle === box.from || middle === box.to) break;
    boxes[at] = measured(points, order, box.from, middle);
    boxes.push(measured(points, order, middle, box.to));
  }
  const ofPoint = new Uint16Array(order.length);
  boxes.forEach(({ from, to }, box) => {
    for (let at = from; at < to; at++) ofPoint[order[at]!] = box;
  });
  return { count: boxes.length, centres: boxes.map(({ mean }) => mean), ofPoint };
}

function measured(
  { weight: weights, x: xs, y: ys, z: zs }: Points,
  order: Int32Array,
  from: number,
  to: number,
): Box {
  let [w, sx, sy, sz] = [0, 0, 0, 0];
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    const weight = weights[i]!;
    w += weight;
    sx += weight * xs[i]!;
    sy += weight * ys[i]!;
    sz += weight * zs[i]!;
  }
  const [mx, my, mz] = [sx / w, sy / w, sz / w];
  let [xx, xy, xz, yy, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    const weight = weights[i]!;
    const x = xs[i]! - mx;
    const y = ys[i]! - my;
    const z = zs[i]! - mz;
    xx += weight * x * x;
    xy += weight * x * y;
    xz += weight * x * z;
    yy += weight * y * y;
    yz += weight * y * z;
    zz += weight * z * z;
  }
  const axis = firstAxis(xx, xy, xz, yy, yz, zz);
  const [ax, ay, az] = axis;
  const along =
    xx * ax * ax + yy * ay * ay + zz * az * az + 2 * (xy * ax * ay + xz * ax * az + yz * ay * az);
  return { from, to, weight: w, mean: [mx, my, mz], axis, variance: along / w };
}

/**
 * First eigenvector of a symmetric 3 × 3 matrix. Squaring it five times turns all columns that way;
 * the longest is taken.
 */
function firstAxis(
  xx: number,
  xy: number,
  xz: number,
  yy: number,
  yz: number,
  zz: number,
): readonly [number, number, number] {
  for (let pass = 0; pass < 5; pass++) {
    const trace = xx + yy + zz;
    if (!(trace > 0)) return [1, 0, 0];
    const per = 1 / trace;
    const [a, b, c, d, e, f] = [xx * per, xy * per, xz * per, yy * per, yz * per, zz * per];
    xx = a * a + b * b + c * c;
    xy = a * b + b * d + c * e;
    xz = a * c + b * e + c * f;
    yy = b * b + d * d + e * e;
    yz = b * c + d * e + e * f;
    zz = c * c + e * e + f * f;
  }
  const [x, y, z] = xx >= yy && xx >= zz ? [xx, xy, xz] : yy >= zz ? [xy, yy, yz] : [xz, yz, zz];
  const per = 1 / Math.sqrt(x * x + y * y + z * z);
  return [x * per, y * per, z * per];
}

/**
 * Partitions the points of a box at its mean along its axis; returns the index of the second half.
 * @param room buffer as long as `order`; overwritten
 */
function part(
  points: Points,
  order: Int32Array,
  { from, to, mean: [mx, my, mz], axis: [ax, ay, az] }: Box,
  room: Int32Array,
): number {
  const { x, y, z } = points;
  let before = from;
  let after = 0;
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    const along = (x[i]! - mx) * ax + (y[i]! - my) * ay + (z[i]! - mz) * az;
    // Write to both sides and advance only one: the side is unpredictable.
    const isBefore = +(along < 0);
    order[before] = i;
    room[after] = i;
    before += isBefore;
    after += 1 - isBefore;
  }
  for (let k = 0; k < after; k++) order[before + k] = room[k]!;
  return before;
}
