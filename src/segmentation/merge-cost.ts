import { branchFreeMin, SUM } from './boundaries.ts';

/** Nodes to merge: weight and mean OKLab of each. */
export interface MergeNodes {
  readonly count: number;
  /** Number of pixels, and of cells of the work image. */
  readonly weight: Float64Array;
  readonly cells: Float64Array;
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
}

/** A group of merged nodes: sums, and the means derived from them. */
export interface MergedGroup {
  weight: number;
  cells: number;
  /** Σ w L, Σ w L², Σ w L a, Σ w L b: for the line from black through the group's colours. */
  sL: number;
  sLL: number;
  sLa: number;
  sLb: number;
  /** Mean L; least-squares a/L, b/L and C/L of that line. */
  L: number;
  a: number;
  b: number;
  C: number;
}

/** A group without nodes; its means are undefined. */
export const emptyGroup = (): MergedGroup => ({
  weight: 0,
  cells: 0,
  sL: 0,
  sLL: 0,
  sLa: 0,
  sLb: 0,
  L: 0,
  a: 0,
  b: 0,
  C: 0,
});

/** Adds a group to another, or subtracts it; the result must not be empty. */
export function addGroup(to: MergedGroup, from: MergedGroup, way: 1 | -1): void {
  to.weight += way * from.weight;
  to.cells += way * from.cells;
  to.sL += way * from.sL;
  to.sLL += way * from.sLL;
  to.sLa += way * from.sLa;
  to.sLb += way * from.sLb;
  updateMeans(to);
}

/** Updates the means from the sums. */
function updateMeans(group: MergedGroup): void {
  group.L = group.sL / group.weight;
  group.a = group.sLa / group.sLL;
  group.b = group.sLb / group.sLL;
  group.C = length(group.a, group.b);
}

/** A group of the single node i. */
export function groupOf(nodes: MergeNodes, i: number): MergedGroup {
  const [w, L, a, b] = [nodes.weight[i]!, nodes.L[i]!, nodes.a[i]!, nodes.b[i]!];
  const group: MergedGroup = {
    ...emptyGroup(),
    weight: w,
    cells: nodes.cells[i]!,
    sL: w * L,
    // Black has no direction: avoid 0/0.
    sLL: w * Math.max(L * L, 1e-9),
    sLa: w * L * a,
    sLb: w * L * b,
  };
  updateMeans(group);
  return group;
}

/**
 * Merge cost: dissimilarity of two groups in OKLab, discounting a change of light. The weights and
 * ramps below are tuned by hand; they are ratios, or OKLab units.
 * @param at offset of their boundary's sums, directed from the first to the second
 * @param around number of crossings between the group that has fewer and all others
 * @returns 0 for identical groups; about OKLab distance
 */
export function mergeCost(
  p: MergedGroup,
  q: MergedGroup,
  sums: Float64Array,
  at: number,
  around: number,
): number {
  const { L: pL, a: pa, b: pb, C: pC } = p;
  const { L: qL, a: qa, b: qb, C: qC } = q;
  const dL = Math.abs(pL - qL);
  const low = Math.max(0.02, branchFreeMin(pL, qL));
  const strength = branchFreeMin(pC, qC);
  const [da, db, dC] = [qa - pa, qb - pb, qC - pC];
  const apartC2 = da * da + db * db;
  // Chroma and hue differences, scaled to a luminance between the two. The eye tolerates more in
  // strong colours, and more in chroma than in hue.
  const there = Math.sqrt((low * (pL + qL)) / 2);
  const across = (Math.abs(dC) * there) / (1 + 4 * strength);
  const turned = (Math.sqrt(Math.abs(apartC2 - dC * dC)) * there) / (1 + 2 * strength);
  // Sheen adds white: the lighter group has a lower C/L, but hardly less chroma. The ramp runs from
  // 0.6 to 0.85 of the darker group's chroma.
  const isLighter = +(pL > qL);
  const pale = pC * pL - qC * qL;
  const darkC = pC * pL - isLighter * pale;
  const lightC = qC * qL + isLighter * pale;
  const isPaler = 1 - (isLighter ^ +(pC < qC));
  const sheen = isPaler * clamp01((lightC / Math.max(1e-6, darkC) - 0.6) / 0.25);
  const mismatch = length(turned, across * (1 - 0.55 * sheen));
  // 0…1: how far the hue alone identifies one object in two lights. A strong colour does, or nearly
  // equal ones; greys are alike by chance.
  const alike = 1 - Math.sqrt(apartC2) / (0.15 * Math.max(1e-6, strength));
  const hueHolds = Math.max(
    clamp01((strength - 0.05) / 0.13),
    0.75 * clamp01(2 * alike) * clamp01((strength - 0.02) / 0.02),
  );
  const apart = length(mismatch, dL * (0.6 - 0.4 * hueHolds));
  const n = sums[at + SUM.crossings]!;
  // Without a real boundary there is nothing to measure: fewer than 12 crossings, or under 3 % of
  // the smaller group's. From 15 % on the boundary counts in full.
  const touch = n < 12 ? 0 : clamp01((n / around - 0.03) / 0.12);
  if (touch === 0) return apart;
  // In a strong colour sheen alone can make such an edge.
  const bySheen = sheen * hueHolds * (across * across > turned * turned ? 1 : 0);
  const hardC =
    hardInColour(sums, at, da, db, low) * clamp01((mismatch - 0.004) / 0.006) * (1 - 0.7 * bySheen);
  const hard = Math.max(hardInLight(sums, at), hardC);
  const jump = Math.sqrt(Math.max(0, sums[at + SUM.acrossL]! - sums[at + SUM.besideL]!) / n);
  const light = (hard * (1 - 0.8 * hueHolds) * (dL + jump)) / 2 + 0.04 * dL;
  // A soft drift of hue within an object is discounted, up to a limit.
  const wander = 0.45 + 0.55 * clamp01((mismatch - 0.016) / 0.022);
  const met = length(mismatch * Math.max(wander, 0.45 + 1.2 * hardC), light);
  return touch * met + (1 - touch) * apart;
}

/** Sharpness of a boundary in lightness: how much more it changes across than beside, 0…1. */
function hardInLight(sums: Float64Array, at: number): number {
  const grain = sums[at + SUM.crossings]! * GRAIN_L;
  const step = (sums[at + SUM.acrossL]! + grain) / (sums[at + SUM.besideL]! + grain);
  return clamp01(Math.sqrt(step) - 1.55);
}

/**
 * The same in a/L and b/L.
 * @param da, db difference of a/L and b/L between the two groups
 * @param low the lower L
 */
function hardInColour(sums: Float64Array, at: number, da: number, db: number, low: number): number {
  const n = sums[at + SUM.crossings]!;
  const grain = n * GRAIN_C;
  const step = (sums[at + SUM.acrossC]! + grain) / (sums[at + SUM.besideC]! + grain);
  // Share of that difference that occurs right at the boundary.
  const whole = n * (da * da + db * db) * low;
  const there = whole === 0 ? 0 : (sums[at + SUM.turnA]! * da + sums[at + SUM.turnB]! * db) / whole;
  return Math.min(clamp01((Math.sqrt(step) - 1.25) / 0.4), clamp01((there - 0.25) / 0.3));
}

/** Noise floor of squared steps: camera grain and rounding in the file. */
const GRAIN_L = 0.004 ** 2;
const GRAIN_C = 0.002 ** 2;
/** Clamps a number to 0…1, without an unpredictable branch. */
const clamp01 = (v: number): number => 0.5 * (1 + Math.abs(v) - Math.abs(v - 1));
/**
 * Length of a vector in the plane. Math.hypot guards against overflow, which makes it many times
 * slower.
 */
const length = (x: number, y: number): number => Math.sqrt(x * x + y * y);
