import type { FlatImage } from '../photo/flat.ts';

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

/** Sums over the borders of those labels that meet: pair p is first[p] < second[p]. */
export interface Edges {
  readonly first: readonly number[];
  readonly second: readonly number[];
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

/** @param label of each cell, `count` or more where none */
export function borders(
  image: FlatImage,
  width: number,
  height: number,
  label: Uint16Array,
  count: number,
): Edges {
  const crossing = new Crossing(image, label, count);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    // Every second place is measured, as on a chequerboard: they are many, and neighbours are alike.
    crossing.odd = (row + y) & 1;
    const down = y + 1 < height;
    for (let x = 0, p = row; x < width; x++, p++) {
      const i = label[p]!;
      if (i >= count) continue;
      if (x + 1 < width) {
        const j = label[p + 1]!;
        if (j !== i && j < count) crossing.add(p, 1, x, width - 2 - x);
      }
      if (down) {
        const j = label[p + width]!;
        if (j !== i && j < count) crossing.add(p, width, y, height - 2 - y);
      }
    }
  }
  return crossing.edges();
}

/** Adds up the places where two labels meet. */
class Crossing {
  /** Which of two neighbouring places is measured. */
  odd = 0;
  private readonly label: Uint16Array;
  private readonly count: number;
  private readonly first: number[] = [];
  private readonly second: number[] = [];
  private sums = new Float64Array(4096 * FIELDS);
  /** One more than the place of a pair, 0 until it is met. */
  private readonly placeOf: Int32Array;
  private readonly image: FlatImage;

  constructor(image: FlatImage, label: Uint16Array, count: number) {
    this.image = image;
    this.label = label;
    this.count = count;
    this.placeOf = new Int32Array(count * count);
  }

  /**
   * One place where two labels meet: the cells p and p + step.
   * @param before, after cells of the image on either side of them
   */
  add(p: number, step: number, before: number, after: number): void {
    const { label, count } = this;
    const i = label[p]!;
    const j = label[p + step]!;
    const at = this.place(Math.min(i, j), Math.max(i, j));
    const { sums } = this;
    sums[at]!++;
    if ((p & 1) !== this.odd) return;
    const near = p - Math.min(before, REACH) * step;
    const far = p + step + Math.min(after, REACH) * step;
    if (label[near]! >= count || label[far]! >= count) return;
    const left = before >= REACH + SPAN && label[near - SPAN * step]! < count;
    const right = after >= REACH + SPAN && label[far + SPAN * step]! < count;
    if (!left && !right) return;
    const per = left && right ? 0.5 : 1;
    const way = i < j ? 1 : -1;
    sums[at + FIELD.crossings]!++;
    this.measure(near, far, at, FIELD.acrossL, 1, way);
    if (left) this.measure(near - SPAN * step, near, at, FIELD.besideL, per, -way * per);
    if (right) this.measure(far, far + SPAN * step, at, FIELD.besideL, per, -way * per);
  }

  edges(): Edges {
    const { first, second, sums } = this;
    return { first, second, sums: sums.subarray(0, first.length * FIELDS) };
  }

  private place(i: number, j: number): number {
    const key = i * this.count + j;
    let place = this.placeOf[key]!;
    if (place === 0) {
      this.first.push(i);
      this.second.push(j);
      place = this.first.length;
      this.placeOf[key] = place;
      if (place * FIELDS > this.sums.length) {
        const larger = new Float64Array(this.sums.length * 2);
        larger.set(this.sums);
        this.sums = larger;
      }
    }
    return (place - 1) * FIELDS;
  }

  /**
   * The squared steps from cell p to cell q: a/L and b/L are the same in light and shadow; their steps
   * are taken times the darker L, so that grain stays grain.
   */
  private measure(
    p: number,
    q: number,
    at: number,
    field: number,
    weight: number,
    turn: number,
  ): void {
    const { sums } = this;
    const { L, a, b } = this.image;
    const dL = L[p]! - L[q]!;
    const pL = Math.max(DARKEST, L[p]!);
    const qL = Math.max(DARKEST, L[q]!);
    const low = Math.min(pL, qL);
    const perP = low / pL;
    const perQ = low / qL;
    const da = a[q]! * perQ - a[p]! * perP;
    const db = b[q]! * perQ - b[p]! * perP;
    sums[at + field]! += weight * dL * dL;
    sums[at + field + 1]! += weight * (da * da + db * db);
    sums[at + FIELD.turnA]! += turn * da;
    sums[at + FIELD.turnB]! += turn * db;
  }
}

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
    if (i === j) continue;
    give(edges.sums, from, sums, placeOf(count, i, j), i < j ? 1 : -1);
  }
  return { count, sums };
}

/** Where the sums of two nodes stand. */
export const placeOf = (count: number, i: number, j: number): number =>
  (i < j ? i * count + j : j * count + i) * FIELDS;

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
  turn: 1 | -1,
  way: 1 | -1 = 1,
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
