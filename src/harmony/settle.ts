import { type Borders, FIELD, FIELDS } from './border.ts';
import { type Border, cost, type Group, noBorder } from './cost.ts';

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
    give(groups[group[i]!]!, one, 1);
    size[group[i]!]!++;
    for (let j = 0; j < n; j++) {
      if (j === i || !nodes[j]) continue;
      around[i]! += borders.sums[placeOf(borders, i, j) + FIELD.crossings]!;
      shift(borders, i, j, edges, (i * count + group[j]!) * FIELDS, 1);
    }
  }
  const border = noBorder();
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false;
    for (let i = 0; i < n; i++) {
      const one = nodes[i];
      const own = group[i]!;
      if (!one || size[own] === 1) continue;
      give(groups[own]!, one, -1);
      let best = own;
      let least = Infinity;
      for (let g = 0; g < count; g++) {
        read(edges, (i * count + g) * FIELDS, border);
        const c = cost(one, groups[g]!, border, around[i]!);
        // It stays on a draw.
        if (c < least || (c === least && g === own)) {
          least = c;
          best = g;
        }
      }
      give(groups[best]!, one, 1);
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

const placeOf = ({ count }: Borders, i: number, j: number): number =>
  (i < j ? i * count + j : j * count + i) * FIELDS;

/** Adds the border from i to j to sums elsewhere, or takes it away. */
function shift(
  borders: Borders,
  i: number,
  j: number,
  to: Float64Array,
  at: number,
  way: 1 | -1,
): void {
  const from = placeOf(borders, i, j);
  const { sums } = borders;
  for (let field = 0; field < FIELD.turnA; field++) to[at + field]! += way * sums[from + field]!;
  const turn = i < j ? way : -way;
  to[at + FIELD.turnA]! += turn * sums[from + FIELD.turnA]!;
  to[at + FIELD.turnB]! += turn * sums[from + FIELD.turnB]!;
}

function read(sums: Float64Array, at: number, out: Border): void {
  out.all = sums[at + FIELD.meetings]!;
  out.n = sums[at + FIELD.crossings]!;
  out.acrossL = sums[at + FIELD.acrossL]!;
  out.acrossC = sums[at + FIELD.acrossC]!;
  out.besideL = sums[at + FIELD.besideL]!;
  out.besideC = sums[at + FIELD.besideC]!;
  out.turnA = sums[at + FIELD.turnA]!;
  out.turnB = sums[at + FIELD.turnB]!;
}

const emptyGroup = (): Group => ({ weight: 0, cells: 0, sL: 0, sLL: 0, sLa: 0, sLb: 0 });

function give(to: Group, from: Group, way: 1 | -1): void {
  to.weight += way * from.weight;
  to.cells += way * from.cells;
  to.sL += way * from.sL;
  to.sLL += way * from.sLL;
  to.sLa += way * from.sLa;
  to.sLb += way * from.sLb;
}
