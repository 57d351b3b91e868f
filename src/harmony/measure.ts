import type { Lab } from '../colour/lab.ts';
import { product } from '../colour/matrix.ts';
import { FROM_CONES, FROM_OPPONENT } from '../colour/oklab.ts';
import { RGB_WHITE, TO_XYZ } from '../colour/rgb.ts';
import { cubeRoot } from '../photo/cuberoot.ts';
import type { WorkImage } from '../photo/work.ts';
import { inPieces } from '../pieces.ts';
import { type LadderStep, STEPS } from './harmony.ts';

/** Buckets of CIELAB per unit; L*, a* and b* are counted by themselves. */
const PER = 8;
const LOWEST = -160;
const BUCKETS = 320 * PER;

/** One colour's cells, counted: enough for its medians and its ladder. */
export interface Tally {
  readonly colour: number;
  /** Pixels looked at, and those of them that were measured. */
  weight: number;
  measured: number;
  /** Per bucket of L*: weight, and sums of L*, a*, b*. */
  readonly light: Float64Array;
  /** Per bucket of a* and of b*: weight and sum. */
  readonly a: Float64Array;
  readonly b: Float64Array;
}

/** A colour of many cells is measured on every second, fourth … of them: its medians need no more than so many. */
const PLENTY = 10_000;

/** How surely a cell is of its colour, told for what many cells have in common. */
export interface Certainty {
  readonly cells: Uint16Array;
  /** 0…1 for each value of `cells` that is of any colour. */
  readonly sure: Float64Array;
}

/**
 * Counts the cells of a labelling into their colours, in CIELAB (D65). Colours without cells are left out.
 * A cell that may as well be of another colour is a full one of its area, but says less of how it looks.
 */
export function tally(
  work: WorkImage,
  label: Uint8Array,
  colours: number,
  certainty?: Certainty,
): Tally[] {
  const all: Tally[] = Array.from({ length: colours }, (_, colour) => ({
    colour,
    weight: 0,
    measured: 0,
    light: new Float64Array(BUCKETS * 4),
    a: new Float64Array(BUCKETS * 2),
    b: new Float64Array(BUCKETS * 2),
  }));
  const counts = new Uint32Array(256);
  const weights = new Float64Array(256);
  inPieces(label.length, (from, to) => weigh(label, work.seen, from, to, counts, weights));
  for (const one of all) one.weight = weights[one.colour]!;
  const limit = Float64Array.from(
    counts,
    (n) => 2 ** (32 - Math.max(0, Math.floor(Math.log2(n / PLENTY)))) - 1,
  );
  inPieces(label.length, (from, to) => count(work, label, limit, certainty, from, to, all));
  return all.filter((one) => one.weight > 0);
}

/** Cells and pixels of each label. */
function weigh(
  label: Uint8Array,
  seen: Float32Array,
  from: number,
  to: number,
  counts: Uint32Array,
  weights: Float64Array,
): void {
  for (let i = from; i < to; i++) {
    const colour = label[i]!;
    counts[colour]!++;
    weights[colour]! += seen[i]!;
  }
}

function count(
  work: WorkImage,
  label: Uint8Array,
  limit: Float64Array,
  certainty: Certainty | undefined,
  from: number,
  to: number,
  all: readonly Tally[],
): void {
  const [[lL, la, lb], [mL, ma, mb], [sL, sa, sb]] = FROM_OPPONENT;
  const [[xl, xm, xs], [yl, ym, ys], [zl, zm, zs]] = CONES_TO_XYZ;
  for (let i = from; i < to; i++) {
    // By a multiplicative hash: no pattern of the picture can fall in step with it.
    if (Math.imul(i, 0x9e3779b1) >>> 0 > limit[label[i]!]!) continue;
    const one = all[label[i]!];
    if (!one || work.seen[i] === 0) continue;
    const weight = work.seen[i]! * (certainty ? certainty.sure[certainty.cells[i]!]! : 1);
    // Back from OKLab to cone signals, then to CIELAB.
    const oL = work.L[i]!;
    const oa = work.a[i]!;
    const ob = work.b[i]!;
    let l = lL * oL + la * oa + lb * ob;
    let m = mL * oL + ma * oa + mb * ob;
    let s = sL * oL + sa * oa + sb * ob;
    l = l * l * l;
    m = m * m * m;
    s = s * s * s;
    const fx = f(xl * l + xm * m + xs * s);
    const fy = f(yl * l + ym * m + ys * s);
    const fz = f(zl * l + zm * m + zs * s);
    const L = 116 * fy - 16;
    const a = 500 * (fx - fy);
    const b = 200 * (fy - fz);
    one.measured += weight;
    let at = bucketOf(L) * 4;
    one.light[at]! += weight;
    one.light[at + 1]! += weight * L;
    one.light[at + 2]! += weight * a;
    one.light[at + 3]! += weight * b;
    at = bucketOf(a) * 2;
    one.a[at]! += weight;
    one.a[at + 1]! += weight * a;
    at = bucketOf(b) * 2;
    one.b[at]! += weight;
    one.b[at + 1]! += weight * b;
  }
}

/** Cone signals to XYZ, white 1. */
const CONES_TO_XYZ = product(
  [
    [1 / RGB_WHITE[0], 0, 0],
    [0, 1 / RGB_WHITE[1], 0],
    [0, 0, 1 / RGB_WHITE[2]],
  ],
  product(TO_XYZ.srgb, FROM_CONES),
);

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;
/** The compressive function of CIELAB with our own cube root. */
const f = (t: number): number => (t > EPSILON ? cubeRoot(t) : (KAPPA * t + 16) / 116);

const bucketOf = (v: number): number =>
  Math.max(0, Math.min(BUCKETS - 1, Math.floor((v - LOWEST) * PER)));

/** The weighted median, to the mean of its bucket (an eighth wide). */
function median(buckets: Float64Array, stride: number, weight: number): number {
  let run = 0;
  for (let at = 0; at < buckets.length; at += stride) {
    run += buckets[at]!;
    if (run * 2 >= weight) return buckets[at + 1]! / buckets[at]!;
  }
  return 0;
}

/** Median of L*, of a* and of b*, each by itself: the local colour. */
export const localColour = ({ light, a, b, measured }: Tally): Lab => [
  median(light, 4, measured),
  median(a, 2, measured),
  median(b, 2, measured),
];

/** Where the steps part, as shares of the area from the lightest: a narrow highlight, a narrow deepest fold. */
const PARTS = [0.04, 0.26, 0.6, 0.82, 0.96, 1];

/**
 * Six steps as they are in the photograph: the area's cells by lightness, parted at fixed shares,
 * each step the mean of its part. Lightness never rises.
 */
export function ladder({ light, measured: weight }: Tally): LadderStep[] {
  const steps: LadderStep[] = [];
  let at = light.length - 4;
  let left = light[at]!;
  let before = 0;
  for (let s = 0; s < PARTS.length; s++) {
    const share = PARTS[s]! - before;
    before = PARTS[s]!;
    // A bucket may straddle two steps: each takes its share of it.
    let need = share * weight;
    let [taken, L, a, b] = [0, 0, 0, 0];
    while (need > weight * 1e-12) {
      if (left <= 0) {
        at -= 4;
        if (at < 0) break;
        left = light[at]!;
        continue;
      }
      const take = Math.min(need, left);
      const part = take / light[at]!;
      taken += take;
      L += part * light[at + 1]!;
      a += part * light[at + 2]!;
      b += part * light[at + 3]!;
      need -= take;
      left -= take;
    }
    const last = steps[s - 1]?.lab;
    const mean: Lab = taken > 0 ? [L / taken, a / taken, b / taken] : last!;
    const lab: Lab = last && mean[0] > last[0] ? [last[0], mean[1], mean[2]] : mean;
    steps.push({ step: STEPS[s]!, lab, share });
  }
  return steps;
}
