import type { FlatImage } from '../photo/flat.ts';

/**
 * How hard the borders between labels are. Where light alone changes, colour changes as much
 * beside a border between two labels as across it; where one thing ends and another begins, it
 * jumps there. So the squared step across is compared with the squared steps on both sides:
 * grain and even gradients are in both and fall out.
 *
 * For labels i < j the sums stand at (i × count + j) × FIELDS, in the order of {@link FIELD}.
 */
export interface Borders {
  readonly count: number;
  readonly sums: Float64Array;
}

export const FIELD = {
  /** All places where the two meet. */
  meetings: 0,
  /** Those where both run on for two cells: the crossings that are measured. */
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
  label: Uint8Array,
  count: number,
): Borders {
  const sums = new Float64Array(count * count * FIELDS);
  const steps = new Steps(image);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    const down = y + 1 < height;
    for (let x = 0, p = row; x < width; x++, p++) {
      const i = label[p]!;
      if (i >= count) continue;
      if (x + 1 < width) {
        const j = label[p + 1]!;
        if (j !== i && j < count) cross(steps, label, count, sums, p, 1, x, width - 2 - x);
      }
      if (down) {
        const j = label[p + width]!;
        if (j !== i && j < count) cross(steps, label, count, sums, p, width, y, height - 2 - y);
      }
    }
  }
  return { count, sums };
}

/**
 * One place where two labels meet: the cells p and p + step.
 * @param before, after cells of the image on either side of them
 */
function cross(
  steps: Steps,
  label: Uint8Array,
  count: number,
  sums: Float64Array,
  p: number,
  step: number,
  before: number,
  after: number,
): void {
  const i = label[p]!;
  const j = label[p + step]!;
  const at = (i < j ? i * count + j : j * count + i) * FIELDS;
  sums[at]!++;
  // A lone cell of grain is no border: both labels must run on for two cells.
  if (before > 0 && label[p - step] !== i) return;
  if (after > 0 && label[p + 2 * step] !== j) return;
  const near = p - Math.min(before, REACH) * step;
  const far = p + step + Math.min(after, REACH) * step;
  if (label[near]! >= count || label[far]! >= count) return;
  const left = before >= REACH + SPAN && label[near - SPAN * step]! < count;
  const right = after >= REACH + SPAN && label[far + SPAN * step]! < count;
  if (!left && !right) return;
  let sidesL = 0;
  let sidesC = 0;
  let sidesA = 0;
  let sidesB = 0;
  if (left) {
    steps.measure(near - SPAN * step, near);
    sidesL += steps.light;
    sidesC += steps.hue;
    sidesA += steps.da;
    sidesB += steps.db;
  }
  if (right) {
    steps.measure(far, far + SPAN * step);
    sidesL += steps.light;
    sidesC += steps.hue;
    sidesA += steps.da;
    sidesB += steps.db;
  }
  const per = left && right ? 0.5 : 1;
  steps.measure(near, far);
  sums[at + 1]!++;
  sums[at + 2]! += steps.light;
  sums[at + 3]! += steps.hue;
  sums[at + 4]! += per * sidesL;
  sums[at + 5]! += per * sidesC;
  const way = i < j ? 1 : -1;
  sums[at + 6]! += way * (steps.da - per * sidesA);
  sums[at + 7]! += way * (steps.db - per * sidesB);
}

/**
 * Squared steps from one cell to another. a/L and b/L are the same in light and shadow; their steps
 * are taken times the darker L, so that grain stays grain.
 */
class Steps {
  light = 0;
  hue = 0;
  da = 0;
  db = 0;
  private readonly L: Float32Array;
  /** L, never under the darkest, and a and b divided by it. */
  private readonly low: Float32Array;
  private readonly A: Float32Array;
  private readonly B: Float32Array;

  constructor({ L, a, b }: FlatImage) {
    this.L = L;
    this.low = new Float32Array(L.length);
    this.A = new Float32Array(L.length);
    this.B = new Float32Array(L.length);
    for (let i = 0; i < L.length; i++) {
      const low = Math.max(DARKEST, L[i]!);
      const per = 1 / low;
      this.low[i] = low;
      this.A[i] = a[i]! * per;
      this.B[i] = b[i]! * per;
    }
  }

  measure(p: number, q: number): void {
    const dL = this.L[p]! - this.L[q]!;
    const lp = this.low[p]!;
    const lq = this.low[q]!;
    const low = Math.min(lp, lq);
    const da = (this.A[q]! - this.A[p]!) * low;
    const db = (this.B[q]! - this.B[p]!) * low;
    this.light = dL * dL;
    this.hue = da * da + db * db;
    this.da = da;
    this.db = db;
  }
}

/** Adds the border of j with k to that of i with k. */
export function addBorder({ count, sums }: Borders, i: number, j: number, k: number): void {
  const to = (i < k ? i * count + k : k * count + i) * FIELDS;
  const from = (j < k ? j * count + k : k * count + j) * FIELDS;
  const way = i < k === j < k ? 1 : -1;
  for (let field = 0; field < FIELD.turnA; field++) sums[to + field]! += sums[from + field]!;
  sums[to + FIELD.turnA]! += way * sums[from + FIELD.turnA]!;
  sums[to + FIELD.turnB]! += way * sums[from + FIELD.turnB]!;
}
