import { FIELD, lower } from './border.ts';

/** What is to be joined: weights and mean OKLab of each node. */
export interface Nodes {
  readonly count: number;
  /** Pixels, and cells of the work image. */
  readonly weight: Float64Array;
  readonly cells: Float64Array;
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
}

/** Nodes joined so far: sums, and what follows from them. */
export interface Group {
  weight: number;
  cells: number;
  /** Σ w L, Σ w L², Σ w L a, Σ w L b: the line from black through the group's colours. */
  sL: number;
  sLL: number;
  sLa: number;
  sLb: number;
  /** Mean L; a/L, b/L and C/L of that line. */
  L: number;
  a: number;
  b: number;
  C: number;
}

export const emptyGroup = (): Group => ({
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

/** Adds a group to another, or takes it away; something must be left. */
export function addGroup(to: Group, from: Group, way: 1 | -1): void {
  to.weight += way * from.weight;
  to.cells += way * from.cells;
  to.sL += way * from.sL;
  to.sLL += way * from.sLL;
  to.sLa += way * from.sLa;
  to.sLb += way * from.sLb;
  follow(to);
}

function follow(group: Group): void {
  group.L = group.sL / group.weight;
  group.a = group.sLa / group.sLL;
  group.b = group.sLb / group.sLL;
  group.C = length(group.a, group.b);
}

export function groupOf(nodes: Nodes, i: number): Group {
  const [w, L, a, b] = [nodes.weight[i]!, nodes.L[i]!, nodes.a[i]!, nodes.b[i]!];
  const group: Group = {
    ...emptyGroup(),
    weight: w,
    cells: nodes.cells[i]!,
    sL: w * L,
    // Black has no direction: nothing is divided by nothing.
    sLL: w * Math.max(L * L, 1e-9),
    sLa: w * L * a,
    sLb: w * L * b,
  };
  follow(group);
  return group;
}

/**
 * How unlike two groups are, in OKLab, once a change of light has been discounted.
 * @param at     where the sums of their border stand, from the first to the second
 * @param around crossings between the group that has fewer and all others
 */
export function cost(p: Group, q: Group, sums: Float64Array, at: number, around: number): number {
  const { L: pL, a: pa, b: pb, C: pC } = p;
  const { L: qL, a: qa, b: qb, C: qC } = q;
  const dL = Math.abs(pL - qL);
  const low = Math.max(0.02, lower(pL, qL));
  const strength = lower(pC, qC);
  const [da, db, dC] = [qa - pa, qb - pb, qC - pC];
  const apartC2 = da * da + db * db;
  // Where the lighter one's chroma would fall in the darker one's light, against where it is;
  // in strong colours the eye forgives more, in chroma more than in hue.
  const there = Math.sqrt((low * (pL + qL)) / 2);
  const across = (Math.abs(dC) * there) / (1 + 4 * strength);
  const turned = (Math.sqrt(Math.abs(apartC2 - dC * dC)) * there) / (1 + 2 * strength);
  // Sheen adds white: the lighter one is paler for its light, but hardly paler in itself.
  const isLighter = +(pL > qL);
  const pale = pC * pL - qC * qL;
  const darkC = pC * pL - isLighter * pale;
  const lightC = qC * qL + isLighter * pale;
  const isPaler = 1 - (isLighter ^ +(pC < qC));
  const sheen = isPaler * unit((lightC / Math.max(1e-6, darkC) - 0.6) / 0.25);
  const mismatch = length(turned, across * (1 - 0.55 * sheen));
  // A strong colour, or one that both have exactly alike, is one thing in two lights; greys are
  // alike by chance.
  const alike = 1 - Math.sqrt(apartC2) / (0.15 * Math.max(1e-6, strength));
  const hueHolds = Math.max(
    unit((strength - 0.05) / 0.13),
    0.75 * unit(2 * alike) * unit((strength - 0.02) / 0.02),
  );
  const apart = length(mismatch, dL * (0.6 - 0.4 * hueHolds));
  const n = sums[at + FIELD.crossings]!;
  // What only touches here and there has no border to judge by.
  const touch = n < 12 ? 0 : unit((n / around - 0.03) / 0.12);
  if (touch === 0) return apart;
  // In a strong colour sheen alone makes such an edge.
  const bySheen = sheen * hueHolds * (across * across > turned * turned ? 1 : 0);
  const hardC =
    hardInColour(sums, at, da, db, low) * unit((mismatch - 0.004) / 0.006) * (1 - 0.7 * bySheen);
  const hard = Math.max(hardInLight(sums, at), hardC);
  const jump = Math.sqrt(Math.max(0, sums[at + FIELD.acrossL]! - sums[at + FIELD.besideL]!) / n);
  const light = (hard * (1 - 0.8 * hueHolds) * (dL + jump)) / 2 + 0.04 * dL;
  // Hue may wander softly inside a thing, but not without end.
  const wander = 0.45 + 0.55 * unit((mismatch - 0.016) / 0.022);
  const met = length(mismatch * Math.max(wander, 0.45 + 1.2 * hardC), light);
  return touch * met + (1 - touch) * apart;
}

/** How much more lightness changes across a border than beside it, 0…1. */
function hardInLight(sums: Float64Array, at: number): number {
  const grain = sums[at + FIELD.crossings]! * GRAIN_L;
  const step = (sums[at + FIELD.acrossL]! + grain) / (sums[at + FIELD.besideL]! + grain);
  return unit(Math.sqrt(step) - 1.55);
}

/**
 * The same of a/L and b/L.
 * @param da, db their difference between the two groups
 */
function hardInColour(sums: Float64Array, at: number, da: number, db: number, low: number): number {
  const n = sums[at + FIELD.crossings]!;
  const grain = n * GRAIN_C;
  const step = (sums[at + FIELD.acrossC]! + grain) / (sums[at + FIELD.besideC]! + grain);
  // The part of their difference that happens right at the border.
  const whole = n * (da * da + db * db) * low;
  const there =
    whole === 0 ? 0 : (sums[at + FIELD.turnA]! * da + sums[at + FIELD.turnB]! * db) / whole;
  return Math.min(unit((Math.sqrt(step) - 1.25) / 0.4), unit((there - 0.25) / 0.3));
}

/** Squared steps that mean nothing: the camera's grain and the file's rounding. */
const GRAIN_L = 0.004 ** 2;
const GRAIN_C = 0.002 ** 2;
/** A number kept to 0…1, without a branch that cannot be foreseen. */
const unit = (v: number): number => 0.5 * (1 + Math.abs(v) - Math.abs(v - 1));
/** Of a vector in the plane; Math.hypot, which guards against overflow, takes many times as long. */
const length = (x: number, y: number): number => Math.sqrt(x * x + y * y);
