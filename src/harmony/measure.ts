import type { Lab } from '../colour/lab.ts';
import { RGB_WHITE, TO_XYZ } from '../colour/rgb.ts';
import { cubeRoot } from '../photo/cuberoot.ts';
import type { WorkImage } from '../photo/work.ts';
import { type LadderStep, STEPS } from './harmony.ts';

/** CIELAB (D65) of every cell of a work image; unseen cells hold nothing of use. */
export interface LabImage {
  readonly L: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;
const f = (t: number): number => (t > EPSILON ? cubeRoot(t) : (KAPPA * t + 16) / 116);

/** From the cells' OKLab: cubes give the linear light, one table of primaries the rest. */
export function labImage(work: WorkImage): LabImage {
  const cells = work.L.length;
  const L = new Float32Array(cells);
  const a = new Float32Array(cells);
  const b = new Float32Array(cells);
  const [mx, my, mz] = TO_XYZ.srgb;
  const [wx, wy, wz] = RGB_WHITE;
  for (let i = 0; i < cells; i++) {
    if (work.seen[i] === 0) continue;
    const [oL, oa, ob] = [work.L[i]!, work.a[i]!, work.b[i]!];
    let l = oL + 0.3963377774 * oa + 0.2158037573 * ob;
    let m = oL - 0.1055613458 * oa - 0.0638541728 * ob;
    let s = oL - 0.0894841775 * oa - 1.291485548 * ob;
    l = l * l * l;
    m = m * m * m;
    s = s * s * s;
    const red = 4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s;
    const green = -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s;
    const blue = -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s;
    const fx = f((mx[0] * red + mx[1] * green + mx[2] * blue) / wx);
    const fy = f((my[0] * red + my[1] * green + my[2] * blue) / wy);
    const fz = f((mz[0] * red + mz[1] * green + mz[2] * blue) / wz);
    L[i] = 116 * fy - 16;
    a[i] = 500 * (fx - fy);
    b[i] = 200 * (fy - fz);
  }
  return { L, a, b };
}

/** Cells of one colour with their weights, sorted by what is asked. */
export interface Area {
  readonly cells: Int32Array;
  readonly weight: number;
}

export function area(label: Uint8Array, seen: Uint16Array, colour: number): Area {
  let count = 0;
  for (let i = 0; i < label.length; i++) if (label[i] === colour && seen[i]) count++;
  const cells = new Int32Array(count);
  let weight = 0;
  let at = 0;
  for (let i = 0; i < label.length; i++)
    if (label[i] === colour && seen[i]) {
      cells[at++] = i;
      weight += seen[i]!;
    }
  return { cells, weight };
}

/** Weighted median of one plane over an area, by counting in steps of 1/32. */
function median(plane: Float32Array, { cells, weight }: Area, seen: Uint16Array): number {
  const counts = new Float64Array(BUCKETS);
  const sums = new Float64Array(BUCKETS);
  for (let i = 0; i < cells.length; i++) {
    const v = plane[cells[i]!]!;
    const bucket = bucketOf(v);
    counts[bucket]! += seen[cells[i]!]!;
    sums[bucket]! += seen[cells[i]!]! * v;
  }
  let run = 0;
  for (let k = 0; k < BUCKETS; k++) {
    run += counts[k]!;
    if (run * 2 >= weight) return sums[k]! / counts[k]!;
  }
  return 0;
}

const PER = 16;
const LOWEST = -200;
const BUCKETS = 400 * PER;
const bucketOf = (v: number): number =>
  Math.max(0, Math.min(BUCKETS - 1, Math.floor((v - LOWEST) * PER)));

/** Median of L*, of a* and of b*, each by itself: the local colour. */
export function localColour(lab: LabImage, part: Area, seen: Uint16Array): Lab {
  return [median(lab.L, part, seen), median(lab.a, part, seen), median(lab.b, part, seen)];
}

/** Where the steps part, as shares of the area from the lightest: about a studio's folds. */
const BANDS = [0.04, 0.26, 0.6, 0.82, 0.96, 1];

/**
 * Six steps as they are in the photograph: the area's cells by lightness, parted at fixed shares,
 * each step the mean of its part. Shares are what the parts really hold; lightness never rises.
 */
export function ladder(lab: LabImage, part: Area, seen: Uint16Array): LadderStep[] {
  const { cells, weight } = part;
  // By counting: the cells are walked once, in order of lightness to 1/16 of L*.
  const counts = new Float64Array(BUCKETS * 4);
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i]!;
    const at = bucketOf(lab.L[cell]!) * 4;
    const w = seen[cell]!;
    counts[at]! += w;
    counts[at + 1]! += w * lab.L[cell]!;
    counts[at + 2]! += w * lab.a[cell]!;
    counts[at + 3]! += w * lab.b[cell]!;
  }
  const steps: LadderStep[] = [];
  let bucket = BUCKETS - 1;
  let left = counts[bucket * 4]!;
  let before = 0;
  for (let s = 0; s < 6; s++) {
    // A bucket may straddle two steps: each takes its share of it.
    let need = (BANDS[s]! - before) * weight;
    const share = BANDS[s]! - before;
    before = BANDS[s]!;
    const sum = [0, 0, 0, 0];
    while (need > 1e-9 && bucket >= 0) {
      if (left <= 1e-9) {
        bucket--;
        left = bucket >= 0 ? counts[bucket * 4]! : 0;
        continue;
      }
      const take = Math.min(need, left);
      const w = counts[bucket * 4]!;
      sum[0]! += take;
      for (let c = 1; c < 4; c++) sum[c]! += (take * counts[bucket * 4 + c]!) / w;
      need -= take;
      left -= take;
    }
    const w = sum[0]!;
    const last = steps[s - 1]?.lab;
    const mean: Lab =
      w > 0 ? [sum[1]! / w, sum[2]! / w, sum[3]! / w] : (last ?? ([0, 0, 0] as Lab));
    steps.push({
      step: STEPS[s]!,
      lab: last && mean[0] > last[0] ? [last[0], mean[1], mean[2]] : mean,
      share,
    });
  }
  return steps;
}
