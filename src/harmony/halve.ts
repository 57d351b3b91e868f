/** Points with weights, in a space where distance counts alike in all directions. */
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
  /** Direction in which the box spreads most, and its variance along it. */
  readonly axis: readonly [number, number, number];
  readonly variance: number;
}

/** Points put into boxes. */
export interface Boxes {
  readonly count: number;
  /** Mean of the points in each box. */
  readonly centres: readonly (readonly [number, number, number])[];
  /** Box of each point. */
  readonly ofPoint: Uint16Array;
}

/**
 * Points put into boxes by halving: the box with the largest weight × variance is cut through its mean, across
 * the direction in which it spreads most, until there are `k`. A trace of grain moves the cuts a
 * trace; seeding by the farthest point would leap.
 * @see X. Wu, ACM Trans. Graph. 11 (1992) 348, for cutting by variance (reference from memory)
 */
export function halve(points: Points, k: number): Boxes {
  const order = Int32Array.from(points.weight, (_, i) => i);
  const boxes: Box[] = [measured(points, order, 0, order.length)];
  while (boxes.length < k) {
    let at = 0;
    for (let i = 1; i < boxes.length; i++)
      if (boxes[i]!.weight * boxes[i]!.variance > boxes[at]!.weight * boxes[at]!.variance) at = i;
    const box = boxes[at]!;
    if (!(box.weight * box.variance > 1e-12)) break;
    const middle = part(points, order, box);
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

function measured(points: Points, order: Int32Array, from: number, to: number): Box {
  let [w, sx, sy, sz] = [0, 0, 0, 0];
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    const weight = points.weight[i]!;
    w += weight;
    sx += weight * points.x[i]!;
    sy += weight * points.y[i]!;
    sz += weight * points.z[i]!;
  }
  const [mx, my, mz] = [sx / w, sy / w, sz / w];
  let [xx, xy, xz, yy, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    const weight = points.weight[i]!;
    const x = points.x[i]! - mx;
    const y = points.y[i]! - my;
    const z = points.z[i]! - mz;
    xx += weight * x * x;
    xy += weight * x * y;
    xz += weight * x * z;
    yy += weight * y * y;
    yz += weight * y * z;
    zz += weight * z * z;
  }
  // The first eigenvector by repeated multiplication, from the plainest start.
  let [ax, ay, az] = xx >= yy && xx >= zz ? [1, 0, 0] : yy >= zz ? [0, 1, 0] : [0, 0, 1];
  for (let pass = 0; pass < 24; pass++) {
    const x = xx * ax + xy * ay + xz * az;
    const y = xy * ax + yy * ay + yz * az;
    const z = xz * ax + yz * ay + zz * az;
    const length = Math.sqrt(x * x + y * y + z * z);
    if (length === 0) break;
    [ax, ay, az] = [x / length, y / length, z / length];
  }
  const along =
    xx * ax * ax + yy * ay * ay + zz * az * az + 2 * (xy * ax * ay + xz * ax * az + yz * ay * az);
  return { from, to, weight: w, mean: [mx, my, mz], axis: [ax, ay, az], variance: along / w };
}

/** Moves the points beyond the mean behind the others; returns where they begin. */
function part(points: Points, order: Int32Array, { from, to, mean, axis }: Box): number {
  const before: number[] = [];
  const after: number[] = [];
  for (let k = from; k < to; k++) {
    const i = order[k]!;
    const along =
      (points.x[i]! - mean[0]) * axis[0] +
      (points.y[i]! - mean[1]) * axis[1] +
      (points.z[i]! - mean[2]) * axis[2];
    (along < 0 ? before : after).push(i);
  }
  order.set(before, from);
  order.set(after, from + before.length);
  return from + before.length;
}
