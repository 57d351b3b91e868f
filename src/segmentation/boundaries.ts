import { forEachChunk } from '../chunked.ts';
import type { SmoothedImage } from './smoothing.ts';

/**
 * Boundary statistics: how sharp the boundaries between labels are. Across a shading gradient,
 * colour changes as much beside a boundary as across it; at an object's edge it jumps. So the
 * squared step across is compared with the squared steps on both sides. Grain and even gradients
 * appear in both and cancel.
 */
export const SUM = {
  /** Length of the common boundary, in pairs of adjacent cells. */
  meetings: 0,
  /**
   * Number of crossings: the pairs that are measured, every second of those with room on a side to
   * measure the change beside the boundary.
   */
  crossings: 1,
  /**
   * Sum of squared steps across: of lightness, and of chroma beyond what a change of light
   * explains.
   */
  acrossL: 2,
  acrossC: 3,
  /** Sum of mean squared steps beside the boundary, likewise. */
  besideL: 4,
  besideC: 5,
  /**
   * Signed steps of a/L and b/L from the first label to the second, minus those beside the
   * boundary, times the darker L. Grain has no direction and cancels.
   */
  turnA: 6,
  turnB: 7,
} as const;
/** Number of sums per pair of labels. */
export const SUMS_PER_PAIR = 8;

/**
 * Sums over the boundaries of all adjacent labels. Pair p is first[p] < second[p], sorted by both.
 */
export interface BoundaryList {
  readonly first: Uint16Array;
  readonly second: Uint16Array;
  /** FIELDS values per pair, in the order of {@link SUM}. */
  readonly sums: Float64Array;
}

/** The same as a dense table: for i < j the sums start at (i × count + j) × FIELDS. */
export interface BoundaryTable {
  readonly count: number;
  readonly sums: Float64Array;
}

/** Distance in cells from a boundary to the two cells whose difference is its step. */
const REACH = 2;
/** Distance in cells from there to the cell that shows the change beside the boundary. */
const SPAN = 2 * REACH + 1;
/** Least L that a and b are divided by: in darker cells they are mostly grain. */
const DARKEST = 0.02;

/**
 * Measures the boundaries between labels. The comparisons in the inner loops are unpredictable, so
 * they are branch-free; branches would double the time.
 * @param label of each cell; `count` or more means none
 * @param count number of labels
 * @returns sums for every pair of adjacent labels
 */
export function boundaryStatistics(
  image: SmoothedImage,
  width: number,
  height: number,
  label: Uint16Array,
  count: number,
): BoundaryList {
  const meetings = new AdjacencyCounts(label, count);
  const across = new Int32Array(width * height);
  const down = new Int32Array(width * height);
  const ends: { readonly across: number; readonly down: number }[] = [{ across: 0, down: 0 }];
  for (let y = 0; y < height; y++) {
    const row = y * width;
    // Measure every second pair, in a chequerboard: there are many, and neighbours are alike.
    const odd = (row + y) & 1;
    const last = ends[y]!;
    const below = y + 1 < height ? row + width : row;
    ends.push({
      across: meetings.add(row, row + width - 1, 1, odd, across, last.across),
      down: meetings.add(row, below, width, odd, down, last.down),
    });
  }
  const crossing = new BoundaryGradients(image, label, count, meetings.counts);
  for (let y = 0; y < height; y++) {
    const [from, to] = [ends[y]!, ends[y + 1]!];
    crossing.addAcross(across, from.across, to.across, y * width, width);
    crossing.addDown(down, from.down, to.down, width, y, height);
  }
  return crossing.edges;
}

/** Counts adjacent cells of two labels. */
class AdjacencyCounts {
  /** For i < j at i × count + j. */
  readonly counts: Uint32Array;
  private readonly label: Uint16Array;
  private readonly count: number;

  constructor(label: Uint16Array, count: number) {
    this.label = label;
    this.count = count;
    this.counts = new Uint32Array(count * count);
  }

  /**
   * Counts pairs of adjacent cells along part of a row.
   * @param step offset from a cell to its neighbour
   * @param odd parity of the positions that are listed for measuring
   * @param list positions; written from index `end` on
   * @returns the new end of the list
   */
  add(from: number, to: number, step: number, odd: number, list: Int32Array, end: number): number {
    const { label, count, counts } = this;
    let last = end;
    for (let p = from; p < to; p++) {
      const i = label[p]!;
      const j = label[p + step]!;
      list[last] = p;
      // Advances where i ≠ j and both are below the count.
      last += (-(i ^ j) & (i - count) & (j - count)) >>> 31;
    }
    let kept = end;
    for (let k = end; k < last; k++) {
      const p = list[k]!;
      counts[pairOf(count, label[p]!, label[p + step]!)]!++;
      list[kept] = p;
      kept += (p ^ odd ^ 1) & 1;
    }
    return kept;
  }
}

/** Index of an unordered pair of labels in a dense table. */
function pairOf(count: number, i: number, j: number): number {
  const d = j - i;
  const less = d & (d >> 31);
  return (i + less) * count + j - less;
}

/** Sums up the boundary gradients. */
class BoundaryGradients {
  readonly edges: BoundaryList;
  private readonly label: Uint16Array;
  private readonly count: number;
  /** Offset of each pair's sums. */
  private readonly placeOf: Int32Array;
  /** Per cell: L, L clamped to {@link DARKEST}, and a and b divided by that. */
  private readonly points: Float32Array;

  constructor(image: SmoothedImage, label: Uint16Array, count: number, meetings: Uint32Array) {
    this.label = label;
    this.count = count;
    this.points = pointsOf(image);
    this.placeOf = new Int32Array(meetings.length);
    let pairs = 0;
    for (let i = 0; i < count; i++) pairs = this.number(meetings, i, pairs);
    this.edges = {
      first: new Uint16Array(pairs),
      second: new Uint16Array(pairs),
      sums: new Float64Array(pairs * SUMS_PER_PAIR),
    };
    for (let i = 0; i < count; i++) this.begin(meetings, i);
  }

  /** Assigns offsets to the pairs of label i with higher labels that it touches. */
  private number(meetings: Uint32Array, i: number, pairs: number): number {
    const { count, placeOf } = this;
    for (let j = i + 1, key = i * count + j; j < count; j++, key++) {
      placeOf[key] = pairs * SUMS_PER_PAIR;
      pairs += meetings[key]! > 0 ? 1 : 0;
    }
    return pairs;
  }

  private begin(meetings: Uint32Array, i: number): void {
    const { count, placeOf } = this;
    const { first, second, sums } = this.edges;
    for (let j = i + 1, key = i * count + j; j < count; j++, key++) {
      if (meetings[key] === 0) continue;
      const at = placeOf[key]!;
      first[at / SUMS_PER_PAIR] = i;
      second[at / SUMS_PER_PAIR] = j;
      sums[at + SUM.meetings] = meetings[key]!;
    }
  }

  addAcross(list: Int32Array, from: number, to: number, row: number, width: number): void {
    for (let k = from; k < to; k++) {
      const x = list[k]! - row;
      this.add(list[k]!, 1, x, width - 2 - x);
    }
  }

  addDown(
    list: Int32Array,
    from: number,
    to: number,
    width: number,
    y: number,
    height: number,
  ): void {
    for (let k = from; k < to; k++) this.add(list[k]!, width, y, height - 2 - y);
  }

  /**
   * Measures one crossing, between the cells p and p + step.
   * @param before, after number of cells of the image on either side of them
   */
  private add(p: number, step: number, before: number, after: number): void {
    const { label, count, points } = this;
    const near = p - Math.min(before, REACH) * step;
    const far = p + step + Math.min(after, REACH) * step;
    if (label[near]! >= count || label[far]! >= count) return;
    const left = before >= REACH + SPAN && label[near - SPAN * step]! < count;
    const right = after >= REACH + SPAN && label[far + SPAN * step]! < count;
    if (!left && !right) return;
    const per = left && right ? 0.5 : 1;
    // The boundary lies between `from` and `to`; without room beside it the change there counts as
    // 0.
    const from = near * 4;
    const to = far * 4;
    const leftEnd = left ? from - SPAN * step * 4 : from;
    const rightEnd = right ? to + SPAN * step * 4 : to;
    const L = points[to]! - points[from]!;
    const leftL = points[from]! - points[leftEnd]!;
    const rightL = points[rightEnd]! - points[to]!;
    const a = chromaStep(points, from, to, 2);
    const leftA = chromaStep(points, leftEnd, from, 2);
    const rightA = chromaStep(points, to, rightEnd, 2);
    const b = chromaStep(points, from, to, 3);
    const leftB = chromaStep(points, leftEnd, from, 3);
    const rightB = chromaStep(points, to, rightEnd, 3);
    const i = label[p]!;
    const j = label[p + step]!;
    const way = 1 | ((j - i) >> 31);
    const { sums } = this.edges;
    const at = this.placeOf[pairOf(count, i, j)]!;
    sums[at + SUM.crossings]!++;
    sums[at + SUM.acrossL]! += L * L;
    sums[at + SUM.acrossC]! += a * a + b * b;
    sums[at + SUM.besideL]! += per * (leftL * leftL + rightL * rightL);
    sums[at + SUM.besideC]! +=
      per * (leftA * leftA + leftB * leftB + rightA * rightA + rightB * rightB);
    sums[at + SUM.turnA]! += way * (a - per * (leftA + rightA));
    sums[at + SUM.turnB]! += way * (b - per * (leftB + rightB));
  }
}

function pointsOf(image: SmoothedImage): Float32Array {
  const points = new Float32Array(image.L.length * 4);
  forEachChunk(image.L.length, (from, to) => setPoints(image, from, to, points));
  return points;
}

function setPoints(
  { L, a, b }: SmoothedImage,
  from: number,
  to: number,
  points: Float32Array,
): void {
  for (let i = from, at = from * 4; i < to; i++, at += 4) {
    const light = Math.max(DARKEST, L[i]!);
    const per = 1 / light;
    points[at] = L[i]!;
    points[at + 1] = light;
    points[at + 2] = a[i]! * per;
    points[at + 3] = b[i]! * per;
  }
}

/** Step of a/L or b/L times the darker L, which keeps grain at its own size. */
const chromaStep = (points: Float32Array, from: number, to: number, of: 2 | 3): number =>
  (points[to + of]! - points[from + of]!) * branchFreeMin(points[from + 1]!, points[to + 1]!);

/** Minimum of two numbers, without a branch. */
export const branchFreeMin = (p: number, q: number): number => 0.5 * (p + q - Math.abs(p - q));

/**
 * Sums up the boundaries of nodes, each of which holds several labels; boundaries inside a node are
 * dropped.
 * @param room buffer of at least count² × FIELDS values; overwritten and used by the result
 */
export function boundariesOfNodes(
  edges: BoundaryList,
  nodeOf: Uint8Array,
  count: number,
  room: Float64Array,
): BoundaryTable {
  const sums = room.subarray(0, count * count * SUMS_PER_PAIR).fill(0);
  const { first, second } = edges;
  for (let pair = 0, from = 0; pair < first.length; pair++, from += SUMS_PER_PAIR) {
    const i = nodeOf[first[pair]!]!;
    const j = nodeOf[second[pair]!]!;
    // A boundary inside a node is added on the diagonal, which is never read.
    addSums(edges.sums, from, sums, pairOffset(count, i, j), 1 | ((j - i) >> 31));
  }
  return { count, sums };
}

/** Offset of the sums of two nodes. */
export const pairOffset = (count: number, i: number, j: number): number =>
  pairOf(count, i, j) * SUMS_PER_PAIR;

/** Adds the boundary of j with k to that of i with k, for merging j into i. */
export function addBoundary({ count, sums }: BoundaryTable, i: number, j: number, k: number): void {
  addSums(sums, pairOffset(count, j, k), sums, pairOffset(count, i, k), i < k === j < k ? 1 : -1);
}

/**
 * Adds one boundary's sums to another's.
 * @param turn −1 if the direction is reversed, from the second to the first
 * @param way −1 subtracts
 */
export function addSums(
  from: Float64Array,
  at: number,
  sums: Float64Array,
  to: number,
  turn: number,
  way = 1,
): void {
  // Unrolled in the order of FIELD: a loop takes twice as long.
  sums[to]! += way * from[at]!;
  sums[to + 1]! += way * from[at + 1]!;
  sums[to + 2]! += way * from[at + 2]!;
  sums[to + 3]! += way * from[at + 3]!;
  sums[to + 4]! += way * from[at + 4]!;
  sums[to + 5]! += way * from[at + 5]!;
  const turned = way * turn;
  sums[to + 6]! += turned * from[at + 6]!;
  sums[to + 7]! += turned * from[at + 7]!;
}
