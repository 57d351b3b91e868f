import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { linearOfOklab } from '../colour/oklab.ts';
import { labOfLinear } from '../colour/rgb.ts';
import type { Borders } from './border.ts';

/** What is to be joined: weights and mean OKLab of each node. */
export interface Nodes {
  readonly count: number;
  readonly weight: Float64Array;
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
}

/** Colours that a harmony has at most. */
export const MOST = 7;

/** Nodes joined so far: sums, from which means follow. */
export interface Group {
  weight: number;
  /** Σ w L, Σ w L², Σ w L a, Σ w L b: the line from black through the group's colours. */
  sL: number;
  sLL: number;
  sLa: number;
  sLb: number;
}

/** Sums over the border of two groups. */
export interface Border {
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
  return { weight: w, sL: w * L, sLL: w * L * L, sLa: w * L * a, sLb: w * L * b };
}

export function borderOf(borders: Borders, i: number, j: number): Border {
  const at = i * borders.count + j;
  return {
    n: borders.crossings[at]!,
    acrossL: borders.acrossL[at]!,
    acrossC: borders.acrossC[at]!,
    besideL: borders.besideL[at]!,
    besideC: borders.besideC[at]!,
    turnA: borders.turnA[at]!,
    turnB: borders.turnB[at]!,
  };
}

function absorb<T extends Group | Border>(into: T, from: T): void {
  for (const key of Object.keys(into) as (keyof T)[]) (into[key] as number) += from[key] as number;
}

/**
 * Joins nodes that are one thing in different light, cheapest pair first.
 * @param wanted colours, or undefined to choose by itself
 * @returns the group of each node, 0…groups − 1
 */
export function join(
  nodes: Nodes,
  borders: Borders,
  wanted?: number,
  trace?: (p: Group, q: Group, border: Border, price: number) => void,
): Uint8Array {
  const n = nodes.count;
  const groups: (Group | undefined)[] = [];
  const edges: Border[][] = [];
  let total = 0;
  for (let i = 0; i < n; i++) {
    total += nodes.weight[i]!;
    groups.push(nodes.weight[i]! > 0 ? groupOf(nodes, i) : undefined);
    edges.push(Array.from({ length: n }, (_, j) => borderOf(borders, i, j)));
  }
  const parent = Int32Array.from({ length: n }, (_, i) => i);
  const spread = sceneScale(nodes, total);
  const wander = hueWander(nodes, borders);
  const far = (FAR + FAR_WANDER * wander) * Math.min(1, spread);
  const scale = 0.65 + 0.35 * spread;
  const limit = LIMIT * scale + WANDER * wander;
  let live = groups.filter((g) => g !== undefined).length;
  const costs = new Float64Array(n * n);
  const around = Float64Array.from(edges, (row, i) =>
    row.reduce((sum, edge, j) => (j === i ? sum : sum + edge.n), 0),
  );
  const price = (i: number, j: number) => {
    const gi = groups[i]!;
    const gj = groups[j]!;
    const c = cost(gi, gj, edges[i]![j]!, Math.min(around[i]!, around[j]!));
    const share = Math.min(gi.weight, gj.weight) / total;
    // Past the limit the small go first; a far accent still costs more than a near large one.
    return c > limit ? c * Math.min(1, 0.35 + 4 * Math.sqrt(share)) + limit : c;
  };
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) if (groups[i] && groups[j]) costs[i * n + j] = price(i, j);

  for (;;) {
    let best = Infinity;
    let bi = -1;
    let bj = -1;
    for (let i = 0; i < n; i++) {
      if (!groups[i]) continue;
      for (let j = i + 1; j < n; j++) {
        if (!groups[j]) continue;
        if (costs[i * n + j]! < best) {
          best = costs[i * n + j]!;
          bi = i;
          bj = j;
        }
      }
    }
    if (bi < 0) break;
    if (wanted !== undefined && live <= wanted) break;
    if (wanted === undefined && best > limit && live <= MOST) {
      const small = nearSmall(groups, total, far);
      if (small < 0) break;
      best = Infinity;
      for (let k = 0; k < n; k++) {
        const c =
          groups[k] && k !== small ? costs[Math.min(k, small) * n + Math.max(k, small)]! : best;
        if (c >= best) continue;
        best = c;
        bi = Math.min(k, small);
        bj = Math.max(k, small);
      }
    }
    trace?.(groups[bi]!, groups[bj]!, edges[bi]![bj]!, best);
    around[bi]! += around[bj]! - 2 * edges[bi]![bj]!.n;
    absorb(groups[bi]!, groups[bj]!);
    groups[bj] = undefined;
    parent[bj] = bi;
    for (let k = 0; k < n; k++) {
      if (!groups[k] || k === bi) continue;
      absorb(edges[bi]![k]!, edges[bj]![k]!);
      const edge = edges[bi]![k]!;
      edges[k]![bi] = { ...edge, turnA: -edge.turnA, turnB: -edge.turnB };
      costs[Math.min(bi, k) * n + Math.max(bi, k)] = price(Math.min(bi, k), Math.max(bi, k));
    }
    live--;
  }
  const order = new Map<number, number>();
  for (let i = 0; i < n; i++) if (groups[i]) order.set(i, order.size);
  return Uint8Array.from({ length: n }, (_, i) => {
    let root = i;
    while (parent[root] !== root) root = parent[root]!;
    return order.get(root) ?? 255;
  });
}

/** Cost up to which two groups are one thing, in a sunny scene. */
const LIMIT = 0.024;
/** … and more where hue wanders inside things. */
const WANDER = 0.35;

/** A thing of less than this share … */
const SMALL = 0.015;
/** … is kept only if it is farther than this from every other (CIEDE2000, kL = 2). */
const FAR = 7;
const FAR_WANDER = 350;

/** The smallest group that is small and not far from another, or −1. */
function nearSmall(groups: readonly (Group | undefined)[], total: number, far: number): number {
  const live = groups.flatMap((g, i) => (g ? [{ i, g, lab: labOfGroup(g) }] : []));
  live.sort((p, q) => p.g.weight - q.g.weight || p.i - q.i);
  for (const p of live)
    if (p.g.weight < SMALL * total && live.length > 1)
      if (live.some((q) => q !== p && deltaE00(p.lab, q.lab, 2) < far)) return p.i;
  return -1;
}

function labOfGroup(g: Group): Lab {
  const L = g.sL / g.weight;
  const rgb = linearOfOklab(L, (g.sLa / g.sLL) * L, (g.sLb / g.sLL) * L, new Float64Array(3));
  return labOfLinear(rgb[0]!, rgb[1]!, rgb[2]!);
}

/**
 * How unlike two groups are, in OKLab, once a change of light has been discounted.
 * @param around crossings between the group that has fewer and all others
 */
export function cost(p: Group, q: Group, border: Border, around = border.n): number {
  const pL = p.sL / p.weight;
  const qL = q.sL / q.weight;
  const dL = Math.abs(pL - qL);
  const [pa, pb, qa, qb] = [p.sLa / p.sLL, p.sLb / p.sLL, q.sLa / q.sLL, q.sLb / q.sLL];
  const [pC, qC] = [Math.hypot(pa, pb), Math.hypot(qa, qb)];
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
  const mismatch = Math.hypot(turned, across * (1 - 0.55 * sheen));
  const hueHolds = unit((strength - 0.05) / 0.13);
  const apart = Math.hypot(mismatch, dL * (0.6 - 0.4 * hueHolds));
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
  const met = Math.hypot(mismatch * Math.max(wander, 0.45 + 1.2 * hardC), light);
  return touch * met + (1 - touch) * apart;
}

/** Squared steps that mean nothing: the camera's grain and the file's rounding. */
const GRAIN_L = 0.004 ** 2;
const GRAIN_C = 0.002 ** 2;
const unit = (v: number): number => Math.max(0, Math.min(1, v));

/** How far apart colours lie in this scene, 1 in a sunny one: what counts as far goes with it. */
export function sceneScale(nodes: Nodes, total: number): number {
  let sum = 0;
  for (const plane of [nodes.L, nodes.a, nodes.b]) {
    let mean = 0;
    for (let i = 0; i < nodes.count; i++) mean += (nodes.weight[i]! * plane[i]!) / total;
    for (let i = 0; i < nodes.count; i++)
      sum += (nodes.weight[i]! / total) * (plane[i]! - mean) ** 2;
  }
  return Math.min(1.2, Math.max(0.35, Math.sqrt(sum) / 0.15));
}

/**
 * How much a/L and b/L differ between neighbouring nodes, the median over all crossings: nearly
 * all of them lie inside things.
 */
export function hueWander(nodes: Nodes, borders: Borders): number {
  const n = nodes.count;
  const pairs: { differs: number; crossings: number }[] = [];
  let all = 0;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const crossings = borders.crossings[i * n + j]!;
      if (crossings < 20) continue;
      const [pL, qL] = [Math.max(0.02, nodes.L[i]!), Math.max(0.02, nodes.L[j]!)];
      const da = nodes.a[i]! / pL - nodes.a[j]! / qL;
      const db = nodes.b[i]! / pL - nodes.b[j]! / qL;
      const differs = Math.hypot(da, db) * Math.sqrt((Math.min(pL, qL) * (pL + qL)) / 2);
      pairs.push({ differs, crossings });
      all += crossings;
    }
  pairs.sort((p, q) => p.differs - q.differs);
  let run = 0;
  for (const { differs, crossings } of pairs) {
    run += crossings;
    if (run * 2 >= all) return differs;
  }
  return 0;
}
