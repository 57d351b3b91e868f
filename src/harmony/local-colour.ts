import { forEachChunk } from '../chunked.ts';
import type { Lab } from '../colour/lab.ts';
import { product } from '../colour/matrix.ts';
import { FROM_CONES, FROM_OPPONENT } from '../colour/oklab.ts';
import { RGB_WHITE, TO_XYZ } from '../colour/rgb.ts';
import { cubeRoot } from '../photo/cube-root.ts';
import type { DownsampledImage } from '../photo/downsample.ts';
import type { Segmentation } from '../segmentation/segment-image.ts';
import { LADDER_STEPS, type LadderStep } from './harmony.ts';

/** Buckets per CIELAB unit; L*, a* and b* have separate histograms. */
const PER = 8;
const LOWEST = -160;
const BUCKETS = 320 * PER;

/** Histograms of one colour's cells: enough for its medians and its ladder. */
interface ColourTally {
  readonly colour: number;
  /** Number of included pixels, and the weight of those that were measured. */
  weight: number;
  measured: number;
  /** Per bucket of L*: weight, and weighted sums of L*, a*, b*. */
  readonly light: Float64Array;
  /** Per bucket of a* and of b*: weight and weighted sum. */
  readonly a: Float64Array;
  readonly b: Float64Array;
}

/**
 * Sample size that suffices for medians: of a larger colour only every second, fourth … cell is
 * measured.
 */
const SAMPLE_SIZE = 10_000;

/** Confidence that a cell belongs to its colour, stored per superpixel. */
export type CellConfidence = Pick<Segmentation, 'superpixelOf' | 'confidence'>;

/**
 * Histograms of each colour of a labelling, in CIELAB (D65); colours without cells are omitted. An
 * uncertain cell counts fully as area, but little for the colour's appearance.
 * @param label of each cell
 * @param colours number of labels
 */
export function colourHistograms(
  work: DownsampledImage,
  label: Uint8Array,
  colours: number,
  sure?: CellConfidence,
): ColourTally[] {
  const all: ColourTally[] = Array.from({ length: colours }, (_, colour) => ({
    colour,
    weight: 0,
    measured: 0,
    light: new Float64Array(BUCKETS * 4),
    a: new Float64Array(BUCKETS * 2),
    b: new Float64Array(BUCKETS * 2),
  }));
  const counts = new Uint32Array(256);
  const weights = new Float64Array(256);
  forEachChunk(label.length, (from, to) =>
    weigh(label, work.pixelCounts, from, to, counts, weights),
  );
  for (const one of all) one.weight = weights[one.colour]!;
  const limit = Float64Array.from(
    counts,
    (n) => 2 ** (32 - Math.max(0, Math.floor(Math.log2(n / SAMPLE_SIZE)))) - 1,
  );
  forEachChunk(label.length, (from, to) => count(work, label, limit, sure, from, to, all));
  return all.filter((one) => one.weight > 0);
}

/** Number of cells and of pixels of each label. */
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
  work: DownsampledImage,
  label: Uint8Array,
  limit: Float64Array,
  sure: CellConfidence | undefined,
  from: number,
  to: number,
  all: readonly ColourTally[],
): void {
  const [[lL, la, lb], [mL, ma, mb], [sL, sa, sb]] = FROM_OPPONENT;
  const [[xl, xm, xs], [yl, ym, ys], [zl, zm, zs]] = CONES_TO_XYZ;
  for (let i = from; i < to; i++) {
    // Sample by a multiplicative hash, which cannot fall in step with a pattern of the picture.
    if (Math.imul(i, 0x9e3779b1) >>> 0 > limit[label[i]!]!) continue;
    const one = all[label[i]!];
    if (!one || work.pixelCounts[i] === 0) continue;
    const weight = work.pixelCounts[i]! * (sure ? sure.confidence[sure.superpixelOf[i]!]! : 1);
    // From OKLab back to cone signals, then to CIELAB.
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

/** From cone signals to XYZ relative to white. */
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
/** CIELAB's compression function, with our own cube root. */
const f = (t: number): number => (t > EPSILON ? cubeRoot(t) : (KAPPA * t + 16) / 116);

const bucketOf = (v: number): number =>
  Math.max(0, Math.min(BUCKETS - 1, Math.floor((v - LOWEST) * PER)));

/** Weighted median: the mean of the bucket that holds it (an eighth of a unit wide). */
function median(buckets: Float64Array, stride: number, weight: number): number {
  let run = 0;
  for (let at = 0; at < buckets.length; at += stride) {
    run += buckets[at]!;
    if (run * 2 >= weight) return buckets[at + 1]! / buckets[at]!;
  }
  return 0;
}

/** Local colour: the median of L*, of a* and of b* separately. */
export const localColour = ({ light, a, b, measured }: ColourTally): Lab => [
  median(light, 4, measured),
  median(a, 2, measured),
  median(b, 2, measured),
];

/**
 * Cumulative shares of the area at which the steps end, lightest first: a narrow highlight and a
 * narrow deepest fold.
 */
const PARTS = [0.04, 0.26, 0.6, 0.82, 0.96, 1];

/**
 * The six steps of a colour: its cells sorted by lightness, divided at fixed shares; each step is
 * the mean of its part. Lightness never rises.
 */
export function ladder({ light, measured: weight }: ColourTally): LadderStep[] {
  const steps: LadderStep[] = [];
  let at = light.length - 4;
  let left = light[at]!;
  let before = 0;
  for (let s = 0; s < PARTS.length; s++) {
    const share = PARTS[s]! - before;
    before = PARTS[s]!;
    // A bucket may straddle two steps and is then divided.
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
    steps.push({ step: LADDER_STEPS[s]!, lab, share });
  }
  return steps;
}
