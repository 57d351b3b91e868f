import { type BoundaryTable, SUM, SUMS_PER_PAIR } from './boundaries.ts';
import type { MergeNodes } from './merge-cost.ts';

/** Global image statistics. */
export interface ImageStatistics {
  /** Total weight of all nodes. */
  readonly total: number;
  readonly spread: number;
  readonly hueVariation: number;
}

/** Computes the global statistics of a photograph from its nodes and their boundaries. */
export function imageStatistics(nodes: MergeNodes, borders: BoundaryTable): ImageStatistics {
  const total = nodes.weight.reduce((sum, w) => sum + w, 0);
  return { total, spread: sceneScale(nodes, total), hueVariation: hueVariationOf(nodes, borders) };
}

/**
 * Spread of the colours in OKLab, 1 for a sunny scene, clamped to 0.35…1.2; distances that count as
 * far scale with it.
 */
function sceneScale(nodes: MergeNodes, total: number): number {
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
 * Hue variation: difference of a/L and b/L between adjacent nodes, as the median over all
 * crossings. Nearly all crossings lie within objects. 0 if none has enough.
 */
function hueVariationOf(nodes: MergeNodes, borders: BoundaryTable): number {
  const n = nodes.count;
  const pairs: { differs: number; crossings: number }[] = [];
  let all = 0;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const crossings = borders.sums[(i * n + j) * SUMS_PER_PAIR + SUM.crossings]!;
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
