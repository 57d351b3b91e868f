import type { FlatImage } from '../photo/flat.ts';
import { inPieces } from '../pieces.ts';

/**
 * How hard the borders between colours are. Where light alone changes, colour changes as much
 * beside a border between two of them as across it; where one thing ends and another begins, it
 * jumps there. So the squared step across is compared with the squared steps on both sides:
 * grain and even gradients are in both and fall out.
 */
export const FIELD = {
  /** All places where the two meet. */
  meetings: 0,
  /** Every second of those with room on a side to see what changes there: the crossings that are measured. */
  crossings: 1,
  /** Squared steps across them: of lightness, and of chroma that no change of light explains. */
  acrossL: 2,
  acrossC: 3,
  /** The mean squared steps beside them. */
  besideL: 4,
  besideC: 5,
  /**
   * Steps of a/L and b/L from the first label to the second, less those beside the border, times the
   * darker L. Grain has no direction and falls out.
   */
  turnA: 6,
  turnB: 7,
} as const;
export const FIELDS = 8;

/** Sums over the borders of those labels that meet: pair p is first[p] < second[p], in the order of both. */
export interface Edges {
  readonly first: Uint16Array;
  readonly second: Uint16Array;
  /** FIELDS a pair, in the order of {@link FIELD}. */
  readonly sums: Float64Array;
}

/** The same for every two of a few: for i < j the sums stand at (i × count + j) × FIELDS. */
export interface Borders {
  readonly count: number;
  readonly sums: Float64Array;
}

/** Cells on either side of a border between which its step is measured. */
const REACH = 2;
/** From there as far again, to see what changes beside it. */
const SPAN = 2 * REACH + 1;
/** Darker than this, a and b are mostly grain: they are not divided by less. */
const DARKEST = 0.02;

/**
 * Which of two labels is the lower, whether they differ at all, which of two cells is darker: none of it can be
 * foreseen, so all of it is reckoned without a branch, which would take as long again.
 * @param label of each cell, `count` or more where none
 */
export function borders(
  image: FlatImage,
  width: number,
  height: number,
  label: Uint16Array,
  count: number,
): Edges {
  const meetings = new Meetings(label, count);
  const across = new Int32Array(width * height);
  const down = new Int32Array(width * height);
  const ends: { readonly across: number; readonly down: number }[] = [{ across: 0, down: 0 }];
  for (let y = 0; y < height; y++) {
    const row = y * width;
    // Every second place is measured, as on a chequerboard: they are many, and neighbours are alike.
    const odd = (row + y) & 1;
    const last = ends[y]!;
    const below = y + 1 < height ? row + width : row;
    ends.push({
      across: meetings.add(row, row + width - 1, 1, odd, across, last.across),
      down: meetings.add(row, below, width, odd, down, last.down),
    });
  }
  const crossing = new Crossing(image, label, count, meetings.counts);
  for (let y = 0; y < height; y++) {
    const [from, to] = [ends[y]!, ends[y + 1]!];
    crossing.addAcross(across, from.across, to.across, y * width, width);
    crossing.addDown(down, from.down, to.down, width, y, height);
  }
  return crossing.edges;
}

/** Counts the places where two labels meet. */
class Meetings {
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
   * Counts where cells of a row meet those a step on.
   * @param odd  which of two neighbouring places are to be measured; they are listed
   * @param list is written from `end` on
   * @returns where the list ends now
   */
  add(from: number, to: number, step: number, odd: number, list: Int32Array, end: number): number {
    const { label, count, counts } = this;
    let last = end;
    for (let p = from; p < to; p++) {
      const i = label[p]!;
      const j = label[p + step]!;
      list[last] = p;
      // On by one where i ≠ j, and both are below the count.
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

/** Where the pair of i and j stands in a table of all, whichever is the lower. */
function pairOf(count: number, i: number, j: number): number {
  const d = j - i;
  const less = d & (d >> 31);
  return (i + less) * count + j - less;
}

/** Adds up the places that are measured. */
class Crossing {
  readonly edges: Edges;
  private readonly label: Uint16Array;
  private readonly count: number;
  /** Where the sums of a pair stand. */
  private readonly placeOf: Int32Array;
  /** Of each cell L, L but not darker than {@link DARKEST}, and a and b over that. */
  private readonly points: Float32Array;

  constructor(image: FlatImage, label: Uint16Array, count: number, meetings: Uint32Array) {
    this.label = label;
    this.count = count;
    this.points = pointsOf(image);
    this.placeOf = new Int32Array(meetings.length);
    let pairs = 0;
    for (let i = 0; i < count; i++) pairs = this.number(meetings, i, pairs);
    this.edges = {
      first: new Uint16Array(pairs),
      second: new Uint16Array(pairs),
      sums: new Float64Array(pairs * FIELDS),
    };
    for (let i = 0; i < count; i++) this.begin(meetings, i);
  }

  /** Numbers the pairs of label i with those after it that it meets. */
  private number(meetings: Uint32Array, i: number, pairs: number): number {
    const { count, placeOf } = this;
    for (let j = i + 1, key = i * count + j; j < count; j++, key++) {
      placeOf[key] = pairs * FIELDS;
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
      first[at / FIELDS] = i;
      second[at / FIELDS] = j;
      sums[at + FIELD.meetings] = meetings[key]!;
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
   * Measures one place where two labels meet: the cells p and p + step.
   * @param before, after cells of the image on either side of them
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
    // The border lies between `from` and `to`; where there is no room beside it, nothing changes there.
    const from = near * 4;
    const to = far * 4;
    const leftEnd = left ? from - SPAN * step * 4 : from;
    const rightEnd = right ? to + SPAN * step * 4 : to;
    const L = points[to]! - points[from]!;
    const leftL = points[from]! - points[leftEnd]!;
    const rightL = points[rightEnd]! - points[to]!;
    const a = turned(points, from, to, 2);
    const leftA = turned(points, leftEnd, from, 2);
    const rightA = turned(points, to, rightEnd, 2);
    const b = turned(points, from, to, 3);
    const leftB = turned(points, leftEnd, from, 3);
    const rightB = turned(points, to, rightEnd, 3);
    const i = label[p]!;
    const j = label[p + step]!;
    const way = 1 | ((j - i) >> 31);
    const { sums } = this.edges;
    const at = this.placeOf[pairOf(count, i, j)]!;
    sums[at + FIELD.crossings]!++;
    sums[at + FIELD.acrossL]! += L * L;
    sums[at + FIELD.acrossC]! += a * a + b * b;
    sums[at + FIELD.besideL]! += per * (leftL * leftL + rightL * rightL);
    sums[at + FIELD.besideC]! +=
      per * (leftA * leftA + leftB * leftB + rightA * rightA + rightB * rightB);
    sums[at + FIELD.turnA]! += way * (a - per * (leftA + rightA));
    sums[at + FIELD.turnB]! += way * (b - per * (leftB + rightB));
  }
}

function pointsOf(image: FlatImage): Float32Array {
  const points = new Float32Array(image.L.length * 4);
  inPieces(image.L.length, (from, to) => setPoints(image, from, to, points));
  return points;
}

function setPoints({ L, a, b }: FlatImage, from: number, to: number, points: Float32Array): void {
  for (let i = from, at = from * 4; i < to; i++, at += 4) {
    const light = Math.max(DARKEST, L[i]!);
    const per = 1 / light;
    points[at] = L[i]!;
    points[at + 1] = light;
    points[at + 2] = a[i]! * per;
    points[at + 3] = b[i]! * per;
  }
}

/** A step of a/L or b/L, times the darker L, so that grain stays grain. */
const turned = (points: Float32Array, from: number, to: number, of: 2 | 3): number =>
  (points[to + of]! - points[from + of]!) * lower(points[from + 1]!, points[to + 1]!);

/** The lower of two numbers, without a branch. */
export const lower = (p: number, q: number): number => 0.5 * (p + q - Math.abs(p - q));

/**
 * The borders of a few nodes, each of several labels: what lies inside a node is none.
 * @param room for at least count² × FIELDS numbers; overwritten
 */
export function bordersOfNodes(
  edges: Edges,
  nodeOf: Uint8Array,
  count: number,
  room: Float64Array,
): Borders {
  const sums = room.subarray(0, count * count * FIELDS).fill(0);
  const { first, second } = edges;
  for (let pair = 0, from = 0; pair < first.length; pair++, from += FIELDS) {
    const i = nodeOf[first[pair]!]!;
    const j = nodeOf[second[pair]!]!;
    // What lies inside a node goes where nothing is read.
    give(edges.sums, from, sums, placeOf(count, i, j), 1 | ((j - i) >> 31));
  }
  return { count, sums };
}

/** Where the sums of two nodes stand. */
export const placeOf = (count: number, i: number, j: number): number =>
  pairOf(count, i, j) * FIELDS;

/** Adds the border of j with k to that of i with k. */
export function addBorder({ count, sums }: Borders, i: number, j: number, k: number): void {
  give(sums, placeOf(count, j, k), sums, placeOf(count, i, k), i < k === j < k ? 1 : -1);
}

/**
 * Adds one border's sums to others.
 * @param turn −1 where it is taken from the second to the first
 * @param way  −1 takes it away again
 */
export function give(
  from: Float64Array,
  at: number,
  sums: Float64Array,
  to: number,
  turn: number,
  way = 1,
): void {
  // In the order of FIELD, one by one: a loop over them takes twice as long.
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
