import { type Borders, FIELD, placeOf } from './border.ts';

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

/** Nodes joined so far: sums, from which means follow. */
export interface Group {
  weight: number;
  cells: number;
  /** Σ w L, Σ w L², Σ w L a, Σ w L b: the line from black through the group's colours. */
  sL: number;
  sLL: number;
  sLa: number;
  sLb: number;
}

/** Sums over the border of two groups. */
export interface Border {
  /** All places where they meet, and those measured. */
  all: number;
  n: number;
  acrossL: number;
  acrossC: number;
  besideL: number;
  besideC: number;
  /** From the first group to the second. */
  turnA: number;
  turnB: number;
}

export function groupOf(nodes: Nodes, i: number): Group {
  const [w, L, a, b] = [nodes.weight[i]!, nodes.L[i]!, nodes.a[i]!, nodes.b[i]!];
  return {
    weight: w,
    cells: nodes.cells[i]!,
    sL: w * L,
    // Black has no direction: nothing is divided by nothing.
    sLL: w * Math.max(L * L, 1e-9),
    sLa: w * L * a,
    sLb: w * L * b,
  };
}

/** Reads the border of groups i and j out of the table of all, from i to j, into `out`. */
export function borderOf({ count, sums }: Borders, i: number, j: number, out: Border): Border {
  return readBorder(sums, placeOf(count, i, j), i < j ? 1 : -1, out);
}

/** Reads a border's sums into `out`; `way` is −1 where they run from the second to the first. */
export function readBorder(sums: Float64Array, at: number, way: 1 | -1, out: Border): Border {
  out.all = sums[at + FIELD.meetings]!;
  out.n = sums[at + FIELD.crossings]!;
  out.acrossL = sums[at + FIELD.acrossL]!;
  out.acrossC = sums[at + FIELD.acrossC]!;
  out.besideL = sums[at + FIELD.besideL]!;
  out.besideC = sums[at + FIELD.besideC]!;
  out.turnA = way * sums[at + FIELD.turnA]!;
  out.turnB = way * sums[at + FIELD.turnB]!;
  return out;
}

export const noBorder = (): Border => ({
  all: 0,
  n: 0,
  acrossL: 0,
  acrossC: 0,
  besideL: 0,
  besideC: 0,
  turnA: 0,
  turnB: 0,
});

/**
 * How unlike two groups are, in OKLab, once a change of light has been discounted.
 * @param around crossings between the group that has fewer and all others
 */
export function cost(p: Group, q: Group, border: Border, around = border.n): number {
  const pL = p.sL / p.weight;
  const qL = q.sL / q.weight;
  const dL = Math.abs(pL - qL);
  const [pa, pb, qa, qb] = [p.sLa / p.sLL, p.sLb / p.sLL, q.sLa / q.sLL, q.sLb / q.sLL];
  const [pC, qC] = [length(pa, pb), length(qa, qb)];
  const strength = Math.min(pC, qC);
  // Where the lighter one's chroma would fall in the darker one's light, against where it is;
  // in strong colours the eye forgives more, in chroma more than in hue.
  const at = Math.sqrt((Math.max(0.02, Math.min(pL, qL)) * (pL + qL)) / 2);
  const across = (Math.abs(pC - qC) * at) / (1 + 4 * strength);
  const turned =
    (Math.sqrt(Math.max(0, (pa - qa) ** 2 + (pb - qb) ** 2 - (pC - qC) ** 2)) * at) /
    (1 + 2 * strength);
  // Sheen adds white: the lighter one is paler for its light, but hardly paler in itself.
  const [lightC, darkC] = pL > qL ? [pC * pL, qC * qL] : [qC * qL, pC * pL];
  const sheen = pL > qL === pC < qC ? unit((lightC / Math.max(1e-6, darkC) - 0.6) / 0.25) : 0;
  const mismatch = length(turned, across * (1 - 0.55 * sheen));
  // A strong colour, or one that both have exactly alike, is one thing in two lights; greys are
  // alike by chance.
  const alike = 1 - length(pa - qa, pb - qb) / (0.15 * Math.max(1e-6, strength));
  const hueHolds = Math.max(
    unit((strength - 0.05) / 0.13),
    0.75 * unit(2 * alike) * unit((strength - 0.02) / 0.02),
  );
  const apart = length(mismatch, dL * (0.6 - 0.4 * hueHolds));
  const { n } = border;
  // What only touches here and there has no border to judge by.
  const touch = n < 12 ? 0 : unit((n / around - 0.03) / 0.12);
  if (touch === 0) return apart;
  const stepL = Math.sqrt((border.acrossL + n * GRAIN_L) / (border.besideL + n * GRAIN_L));
  // The part of their difference in a/L and b/L that happens right at the border.
  const [da, db] = [qa - pa, qb - pb];
  const whole = (da * da + db * db) * Math.max(0.02, Math.min(pL, qL));
  const there = whole > 0 ? (border.turnA * da + border.turnB * db) / n / whole : 0;
  const stepC = Math.sqrt((border.acrossC + n * GRAIN_C) / (border.besideC + n * GRAIN_C));
  // In a strong colour sheen alone makes such an edge.
  const bySheen = sheen * hueHolds * (across * across > turned * turned ? 1 : 0);
  const hardC =
    Math.min(unit((stepC - 1.25) / 0.4), unit((there - 0.25) / 0.3)) *
    unit((mismatch - 0.004) / 0.006) *
    (1 - 0.7 * bySheen);
  const hard = Math.max(unit(stepL - 1.55), hardC);
  const jump = Math.sqrt(Math.max(0, border.acrossL - border.besideL) / n);
  const light = (hard * (1 - 0.8 * hueHolds) * (dL + jump)) / 2 + 0.04 * dL;
  // Hue may wander softly inside a thing, but not without end.
  const wander = 0.45 + 0.55 * unit((mismatch - 0.016) / 0.022);
  const met = length(mismatch * Math.max(wander, 0.45 + 1.2 * hardC), light);
  return touch * met + (1 - touch) * apart;
}

/** Squared steps that mean nothing: the camera's grain and the file's rounding. */
const GRAIN_L = 0.004 ** 2;
const GRAIN_C = 0.002 ** 2;
const unit = (v: number): number => Math.max(0, Math.min(1, v));
/** Of a vector in the plane; Math.hypot, which guards against overflow, takes many times as long. */
const length = (x: number, y: number): number => Math.sqrt(x * x + y * y);
