import { addBorder, type Borders } from './border.ts';
import { type Border, borderOf, cost, type Group, groupOf, type Nodes, noBorder } from './cost.ts';
import { hueWander, sceneScale } from './scene.ts';
import { type Parted, settle } from './settle.ts';
import { FAR, FAR_WANDER, notAThing } from './small.ts';

/** Colours that a harmony has at most. */
export const MOST = 7;

/** Cost up to which two groups are one thing, in a sunny scene. */
const LIMIT = 0.024;
/** … and more where hue wanders inside things. */
const WANDER = 0.35;

/**
 * Joins nodes that are one thing in different light, cheapest pair first.
 * @param wanted colours, or undefined to choose by itself
 * @returns the group of each node, 0…groups − 1
 */
export function join(nodes: Nodes, borders: Borders, wanted?: number): Uint8Array {
  const total = nodes.weight.reduce((sum, w) => sum + w, 0);
  const spread = sceneScale(nodes, total);
  const wander = hueWander(nodes, borders);
  const about = LIMIT * (0.65 + 0.35 * spread) + WANDER * wander;
  // Where hue hardly wanders, what lies inside things is joined far below the limit.
  const loose = Math.max(0, Math.min(1, (wander - 0.003) / 0.004));
  const [low, high] = [(0.45 + 0.3 * loose) * about, (1.25 + 0.1 * loose) * about];
  const parted: Parted = {
    nodes: Array.from({ length: nodes.count }, (_, i) =>
      nodes.weight[i]! > 0 ? groupOf(nodes, i) : undefined,
    ),
    borders,
  };
  const limit = widestGap(runOf(parted, high), low, high);
  const far = (FAR + FAR_WANDER * wander) * Math.min(1, spread);

  const joining = new Joining(parted);
  /** Past the limit the small go first; a far accent still costs more than a near large one. */
  const price = (i: number, j: number) => {
    const c = joining.costs[i * joining.groups.length + j]!;
    if (c <= limit) return c;
    const share = Math.min(joining.groups[i]!.weight, joining.groups[j]!.weight) / total;
    return c * Math.min(1, 0.35 + 4 * Math.sqrt(share)) + limit;
  };
  while (joining.live > (wanted ?? 1)) {
    let pair = joining.cheapest(price);
    if (wanted === undefined && pair.price > limit && joining.live <= MOST) {
      const small = notAThing(joining, total, far);
      if (small < 0) break;
      pair = joining.cheapest((i, j) => (i === small || j === small ? price(i, j) : Infinity));
    }
    joining.merge(pair.i, pair.j);
  }
  const group = joining.labels();
  settle(parted, group, joining.live);
  return group;
}

/** The costs at which nodes are joined, cheapest first, up to a highest one. */
function runOf(parted: Parted, highest: number): number[] {
  const joining = new Joining(parted);
  const run: number[] = [];
  while (joining.live > 1) {
    const pair = joining.cheapest((i, j) => joining.costs[i * joining.groups.length + j]!);
    if (pair.price > highest) break;
    run.push(pair.price);
    joining.merge(pair.i, pair.j);
  }
  return run;
}

/**
 * A limit in the widest gap between the costs from `low` to `high`, so that a trace of grain or another
 * size of the same photograph does not tip a pair over it.
 */
function widestGap(run: readonly number[], low: number, high: number): number {
  const last = Math.log(high);
  let before = Math.log(low);
  let widest = 0;
  let limit = Math.sqrt(low * high);
  const consider = (next: number) => {
    if (next - before > widest) {
      widest = next - before;
      limit = Math.exp((next + before) / 2);
    }
    before = Math.max(before, next);
  };
  for (const c of run) {
    const at = Math.log(Math.max(c, 1e-9));
    if (at > before) consider(Math.min(at, last));
  }
  consider(last);
  return limit;
}

/** Groups of nodes on the way to fewer. */
class Joining {
  readonly groups: (Group | undefined)[] = [];
  /** What joining i and j costs, for i < j, at i × count + j. */
  readonly costs: Float64Array;
  readonly borders: Borders;
  live = 0;
  /** Crossings between a group and all others. */
  private readonly around: Float64Array;
  private readonly parent: Int32Array;
  private readonly border = noBorder();

  constructor({ nodes, borders }: Parted) {
    const n = nodes.length;
    this.borders = { count: n, sums: borders.sums.slice() };
    this.around = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const one = nodes[i];
      this.groups.push(one && { ...one });
      if (one) this.live++;
      for (let j = i + 1; j < n; j++) {
        const crossings = this.edge(i, j).n;
        this.around[i]! += crossings;
        this.around[j]! += crossings;
      }
    }
    this.parent = Int32Array.from({ length: n }, (_, i) => i);
    this.costs = new Float64Array(n * n);
    for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) this.reckon(i, j);
  }

  /** The border from group i to group j; overwritten by the next that is asked for. */
  edge(i: number, j: number): Border {
    return borderOf(this.borders, i, j, this.border);
  }

  private reckon(i: number, j: number): void {
    const p = this.groups[i];
    const q = this.groups[j];
    if (!p || !q) return;
    const around = Math.min(this.around[i]!, this.around[j]!);
    this.costs[i * this.groups.length + j] = cost(p, q, this.edge(i, j), around);
  }

  /** The pair with the lowest price; the first on ties. */
  cheapest(price: (i: number, j: number) => number): { i: number; j: number; price: number } {
    const best = { i: -1, j: -1, price: Infinity };
    const n = this.groups.length;
    for (let i = 0; i < n; i++) {
      if (!this.groups[i]) continue;
      for (let j = i + 1; j < n; j++) {
        if (!this.groups[j]) continue;
        const p = price(i, j);
        if (p < best.price || best.i < 0) {
          best.i = i;
          best.j = j;
          best.price = p;
        }
      }
    }
    return best;
  }

  /** Puts group j into group i. */
  merge(i: number, j: number): void {
    this.around[i]! += this.around[j]! - 2 * this.edge(i, j).n;
    absorb(this.groups[i]!, this.groups[j]!);
    this.groups[j] = undefined;
    this.parent[j] = i;
    for (let k = 0; k < this.groups.length; k++) {
      if (!this.groups[k] || k === i) continue;
      addBorder(this.borders, i, j, k);
      this.reckon(Math.min(i, k), Math.max(i, k));
    }
    this.live--;
  }

  /** The group of each node, numbered from 0; 255 for a node that weighs nothing. */
  labels(): Uint8Array {
    const order = new Map<number, number>();
    this.groups.forEach((group, i) => {
      if (group) order.set(i, order.size);
    });
    return Uint8Array.from(this.parent, (_, i) => {
      let root = i;
      while (this.parent[root] !== root) root = this.parent[root]!;
      return order.get(root) ?? 255;
    });
  }
}

function absorb(into: Group, from: Group): void {
  into.weight += from.weight;
  into.cells += from.cells;
  into.sL += from.sL;
  into.sLL += from.sLL;
  into.sLa += from.sLa;
  into.sLb += from.sLb;
}
