import { type Borders, FIELD, FIELDS } from './border.ts';
import type { Nodes } from './cost.ts';

/** What is so of the whole photograph. */
export interface Scene {
  /** Weight of all nodes. */
  readonly total: number;
  readonly spread: number;
  readonly wander: number;
}

export function sceneOf(nodes: Nodes, borders: Borders): Scene {
  const total = nodes.weight.reduce((sum, w) => sum + w, 0);
  return { total, spread: sceneScale(nodes, total), wander: hueWander(nodes, borders) };
}

/** How far apart colours lie in this scene, 1 in a sunny one: what counts as far goes with it. */
function sceneScale(nodes: Nodes, total: number): number {
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
function hueWander(nodes: Nodes, borders: Borders): number {
  const n = nodes.count;
  const pairs: { differs: number; crossings: number }[] = [];
  let all = 0;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const crossings = borders.sums[(i * n + j) * FIELDS + FIELD.crossings]!;
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
