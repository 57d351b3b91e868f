import { type Borders, FIELD, FIELDS, give, placeOf } from './border.ts';
import { addGroup, cost, emptyGroup, type Group } from './cost.ts';

/** Nodes that are being put into groups, and what is known of them. */
export interface Parted {
  readonly nodes: readonly (Group | undefined)[];
  readonly borders: Borders;
}

/** Rounds after which what still moves is left where it is. */
const ROUNDS = 6;

/**
 * Moves nodes to the group that they are most like, until all stay: what was joined early, and by a
 * hair, goes where it belongs now that the groups are known. So that another size of a photograph,
 * in which other nodes are joined first, still ends in the same groups. No group is left empty.
 * @param group of each node, 0…count − 1; 255 for a node that weighs nothing; overwritten
 */
export function settle({ nodes, borders }: Parted, group: Uint8Array, count: number): void {
  const n = nodes.length;
  const groups = Array.from({ length: count }, emptyGroup);
  const size = new Int32Array(count);
  // Border sums of each node with each group, from the node to the group.
  const edges = new Float64Array(n * count * FIELDS);
  const around = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const one = nodes[i];
    if (!one) continue;
    addGroup(groups[group[i]!]!, one, 1);
    size[group[i]!]!++;
    for (let j = 0; j < n; j++) {
      if (j === i || !nodes[j]) continue;
      around[i]! += borders.sums[placeOf(borders.count, i, j) + FIELD.crossings]!;
      shift(borders, i, j, edges, (i * count + group[j]!) * FIELDS, 1);
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
        const c = cost(one, groups[g]!, edges, (i * count + g) * FIELDS, around[i]!);
        // It stays on a draw.
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
        shift(borders, j, i, edges, (j * count + own) * FIELDS, -1);
        shift(borders, j, i, edges, (j * count + best) * FIELDS, 1);
      }
    }
    if (!moved) return;
  }
}

/** Adds the border from i to j to sums elsewhere, or takes it away. */
function shift(
  { count, sums }: Borders,
  i: number,
  j: number,
  to: Float64Array,
  at: number,
  way: 1 | -1,
): void {
  give(sums, placeOf(count, i, j), to, at, i < j ? 1 : -1, way);
}
