import { addSums, type BoundaryTable, pairOffset, SUM, SUMS_PER_PAIR } from './boundaries.ts';
import { addGroup, emptyGroup, type MergedGroup, mergeCost } from './merge-cost.ts';

/** Nodes to assign to groups, and their boundaries. */
export interface GroupingInput {
  readonly nodes: readonly (MergedGroup | undefined)[];
  readonly borders: BoundaryTable;
}

/** Most passes; nodes that still move after them stay where they are. */
const ROUNDS = 6;

/**
 * Refines a grouping: moves each node to the most similar group until none moves. Early, close
 * merges are corrected now that the groups are known, so that the same photograph at another size
 * ends in the same groups. No group becomes empty.
 * @param group of each node, 0…count − 1; 255 for a node without weight; overwritten
 */
export function refineGroups(
  { nodes, borders }: GroupingInput,
  group: Uint8Array,
  count: number,
): void {
  const n = nodes.length;
  const groups = Array.from({ length: count }, emptyGroup);
  const size = new Int32Array(count);
  // Boundary sums of each node with each group, directed from the node to the group.
  const edges = new Float64Array(n * count * SUMS_PER_PAIR);
  const around = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const one = nodes[i];
    if (!one) continue;
    addGroup(groups[group[i]!]!, one, 1);
    size[group[i]!]!++;
    for (let j = 0; j < n; j++) {
      if (j === i || !nodes[j]) continue;
      around[i]! += borders.sums[pairOffset(borders.count, i, j) + SUM.crossings]!;
      addDirected(borders, i, j, edges, (i * count + group[j]!) * SUMS_PER_PAIR, 1);
    }
  }
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false;
    for (let i = 0; i < n; i++) {
      const one = nodes[i];
      const own = group[i]!;
      if (!one || size[own] === 1) continue;
      addGroup(groups[own]!, one, -1);
      let best = own;
      let least = Infinity;
      for (let g = 0; g < count; g++) {
        const c = mergeCost(one, groups[g]!, edges, (i * count + g) * SUMS_PER_PAIR, around[i]!);
        // On a tie the node stays.
        if (c < least || (c === least && g === own)) {
          least = c;
          best = g;
        }
      }
      addGroup(groups[best]!, one, 1);
      if (best === own) continue;
      moved = true;
      group[i] = best;
      size[own]!--;
      size[best]!++;
      for (let j = 0; j < n; j++) {
        if (j === i || !nodes[j]) continue;
        addDirected(borders, j, i, edges, (j * count + own) * SUMS_PER_PAIR, -1);
        addDirected(borders, j, i, edges, (j * count + best) * SUMS_PER_PAIR, 1);
      }
    }
    if (!moved) return;
  }
}

/** Adds the boundary from i to j to other sums, or subtracts it. */
function addDirected(
  { count, sums }: BoundaryTable,
  i: number,
  j: number,
  to: Float64Array,
  at: number,
  way: 1 | -1,
): void {
  addSums(sums, pairOffset(count, i, j), to, at, i < j ? 1 : -1, way);
}
