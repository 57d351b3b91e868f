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

interface Group {
  weight: number;
  /** Σ w L, Σ w L², Σ w L a, Σ w L b: the line from black through the group's colours. */
  sL: number;
  sLL: number;
  sLa: number;
  sLb: number;
}

/**
 * Joins nodes that are one thing in different light, cheapest pair first.
 * @param wanted colours, or undefined to choose by itself
 * @returns the group of each node, 0…groups − 1
 */
export function join(nodes: Nodes, borders: Borders, wanted?: number): Uint8Array {
  const n = nodes.count;
  const groups: (Group | undefined)[] = [];
  let total = 0;
  for (let i = 0; i < n; i++) {
    const [w, L, a, b] = [nodes.weight[i]!, nodes.L[i]!, nodes.a[i]!, nodes.b[i]!];
    total += w;
    groups.push(
      w > 0 ? { weight: w, sL: w * L, sLL: w * L * L, sLa: w * L * a, sLb: w * L * b } : undefined,
    );
  }
  const parent = Int32Array.from({ length: n }, (_, i) => i);
  const crossings = borders.crossings.slice();
  const across = borders.across.slice();
  const beside = borders.beside.slice();
  const spread = sceneSpread(nodes, total);
  const limit = 0.05 * Math.min(1.2, Math.max(0.35, spread / 0.15));
  let live = groups.filter((g) => g !== undefined).length;

  for (;;) {
    let best = Infinity;
    let bi = -1;
    let bj = -1;
    for (let i = 0; i < n; i++) {
      const gi = groups[i];
      if (!gi) continue;
      for (let j = i + 1; j < n; j++) {
        const gj = groups[j];
        if (!gj) continue;
        const c = cost(gi, gj, crossings[i * n + j]!, across[i * n + j]!, beside[i * n + j]!);
        const share = Math.min(gi.weight, gj.weight) / total;
        // Past the limit the small go first; a far accent still costs more than a near large one.
        const price = c > limit ? c * Math.min(1, 0.35 + 4 * Math.sqrt(share)) + limit : c;
        if (price < best) {
          best = price;
          bi = i;
          bj = j;
        }
      }
    }
    if (bi < 0) break;
    const enough = wanted === undefined ? best > limit && live <= MOST : live <= wanted;
    if (enough) break;
    const gi = groups[bi]!;
    const gj = groups[bj]!;
    gi.weight += gj.weight;
    gi.sL += gj.sL;
    gi.sLL += gj.sLL;
    gi.sLa += gj.sLa;
    gi.sLb += gj.sLb;
    groups[bj] = undefined;
    parent[bj] = bi;
    for (let k = 0; k < n; k++) {
      crossings[bi * n + k]! += crossings[bj * n + k]!;
      crossings[k * n + bi]! += crossings[k * n + bj]!;
      across[bi * n + k]! += across[bj * n + k]!;
      across[k * n + bi]! += across[k * n + bj]!;
      beside[bi * n + k]! += beside[bj * n + k]!;
      beside[k * n + bi]! += beside[k * n + bj]!;
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

/** How unlike two groups are, in OKLab, once a change of light has been discounted. */
function cost(p: Group, q: Group, crossings: number, across: number, beside: number): number {
  const pL = p.sL / p.weight;
  const qL = q.sL / q.weight;
  const dL = Math.abs(pL - qL);
  const low = Math.max(0.02, Math.min(pL, qL));
  const [pa, pb, qa, qb] = [p.sLa / p.sLL, p.sLb / p.sLL, q.sLa / q.sLL, q.sLb / q.sLL];
  // Where the lighter one's chroma would fall in the darker one's light, against where it is.
  const mismatch = Math.hypot(pa - qa, pb - qb) * Math.sqrt(low * Math.max(low, (pL + qL) / 2));
  const strength = Math.min(Math.hypot(pa, pb), Math.hypot(qa, qb));
  const hueHolds = Math.min(1, strength / 0.15);
  let light: number;
  if (crossings >= 8) {
    const jump = Math.sqrt(Math.max(0, across - 1.5 * beside) / crossings);
    light = Math.min(dL, jump) * (1 - 0.6 * hueHolds) + 0.04 * dL;
  } else light = dL * (0.6 - 0.4 * hueHolds);
  return Math.hypot(mismatch, light);
}

/** Standard deviation of the scene's colours in OKLab. */
function sceneSpread(nodes: Nodes, total: number): number {
  let sum = 0;
  for (const plane of [nodes.L, nodes.a, nodes.b]) {
    let mean = 0;
    for (let i = 0; i < nodes.count; i++) mean += (nodes.weight[i]! * plane[i]!) / total;
    for (let i = 0; i < nodes.count; i++)
      sum += (nodes.weight[i]! / total) * (plane[i]! - mean) ** 2;
  }
  return Math.sqrt(sum);
}
