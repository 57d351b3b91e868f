import { portableExp } from '../exponential.ts';
import type { RandomGenerator } from '../random.ts';
import { addBoundary, type BoundaryTable, pairOffset, SUM, SUMS_PER_PAIR } from './boundaries.ts';
import type { ImageStatistics } from './image-statistics.ts';
import { addGroup, groupOf, type MergedGroup, type MergeNodes, mergeCost } from './merge-cost.ts';
import { type GroupingInput, refineGroups } from './refine-groups.ts';
import { FAR, FAR_WANDER, smallestSpuriousRegion } from './spurious-regions.ts';

/** Most colours of a harmony. */
export const MAX_COLOURS = 7;

/** Merge limit: cost up to which two groups are one object, in a sunny scene. */
const MERGE_LIMIT = 0.024;
/** Increase of the limit per unit of hue variation within objects. */
const HUE_VARIATION_GAIN = 0.35;

/** Perturbation of a run, as standard deviations: relative, of the cost of each pair. */
const SHAKEN_COST = 0.15;
/** Of the logarithm of the limit. */
const SHAKEN_LIMIT = 0.3;
/** Relative, of the distance that counts as far. */
const SHAKEN_FAR = 0.1;

/** Input of region merging. */
interface MergeInput {
  readonly nodes: MergeNodes;
  readonly borders: BoundaryTable;
  readonly scene: ImageStatistics;
}

/**
 * Random numbers 0…1 that perturb a run: one for the limit, one for the distance that counts as
 * far, and a generator for the pair costs.
 */
interface RunPerturbation {
  readonly limit: number;
  readonly far: number;
  readonly next: RandomGenerator;
}

/**
 * One run of region merging: merges nodes that are one object in different light, cheapest pair
 * first. Perturbed costs and limits make the runs differ, so that their consensus shows what is
 * certain.
 * @param room buffer as long as the boundary sums; overwritten
 * @param wanted number of colours, or undefined to choose it automatically
 * @returns the group of each node, 0…groups − 1; 255 for a node without weight
 */
export function mergeRegions(
  { nodes, borders, scene }: MergeInput,
  room: Float64Array,
  shake: RunPerturbation,
  wanted?: number,
): Uint8Array {
  const { total, spread, hueVariation: wander } = scene;
  // Where hue hardly varies, merges within objects cost far less than the limit: lower it.
  const loose = Math.max(0, Math.min(1, (wander - 0.003) / 0.004));
  const one =
    (0.75 + 0.25 * loose) * (MERGE_LIMIT * (0.65 + 0.35 * spread) + HUE_VARIATION_GAIN * wander);
  const limit = one * portableExp(SHAKEN_LIMIT * standardised(shake.limit));
  const far =
    (FAR + FAR_WANDER * wander) * Math.min(1, spread) * (1 + SHAKEN_FAR * standardised(shake.far));
  const parted: GroupingInput = {
    nodes: Array.from({ length: nodes.count }, (_, i) =>
      nodes.weight[i]! > 0 ? groupOf(nodes, i) : undefined,
    ),
    borders,
  };
  room.set(borders.sums);
  const own = { count: borders.count, sums: room };
  const joining = new RegionMerger({ ...parted, borders: own }, shake.next, limit, total);
  while (joining.live > (wanted ?? 1)) {
    let pair = joining.cheapest();
    if (wanted === undefined && pair.price > limit && joining.live <= MAX_COLOURS) {
      const small = smallestSpuriousRegion(joining, total, far);
      if (small < 0) break;
      pair = joining.cheapestOf(small);
    }
    joining.merge(pair.i, pair.j);
  }
  const group = joining.labels();
  refineGroups(parted, group, joining.live);
  return group;
}

/** Maps 0…1 uniformly to mean 0 and standard deviation 1 (range ±√3). */
const standardised = (u: number): number => Math.sqrt(3) * (2 * u - 1);

interface Pair {
  readonly i: number;
  readonly j: number;
  readonly price: number;
}

/** The state of agglomerative merging; the boundaries passed in are overwritten. */
class RegionMerger {
  readonly groups: (MergedGroup | undefined)[] = [];
  live = 0;
  private readonly limit: number;
  private readonly total: number;
  private readonly borders: BoundaryTable;
  /** Merge price of i and j, for i < j at i × count + j; Infinity if they cannot merge. */
  private readonly prices: Float64Array;
  /** Random factor on the cost of each pair. */
  private readonly shaken: Float64Array;
  /** For each group: the cheapest partner with a higher index, and its price. */
  private readonly nearest: Int32Array;
  private readonly least: Float64Array;
  /** Number of crossings between a group and all others. */
  private readonly around: Float64Array;
  private readonly parent: Int32Array;

  constructor(
    { nodes, borders }: GroupingInput,
    next: RandomGenerator,
    limit: number,
    total: number,
  ) {
    const n = nodes.length;
    this.limit = limit;
    this.total = total;
    this.borders = borders;
    this.around = new Float64Array(n);
    this.shaken = new Float64Array(n * n);
    for (let i = 0; i < n; i++) {
      const one = nodes[i];
      this.groups.push(one && { ...one });
      if (one) this.live++;
      for (let j = i + 1; j < n; j++) {
        const crossings = this.border(i, j, SUM.crossings);
        this.around[i]! += crossings;
        this.around[j]! += crossings;
        this.shaken[i * n + j] = 1 + SHAKEN_COST * standardised(next());
      }
    }
    this.parent = Int32Array.from({ length: n }, (_, i) => i);
    this.prices = new Float64Array(n * n).fill(Infinity);
    this.nearest = new Int32Array(n);
    this.least = new Float64Array(n);
    for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) this.reckon(i, j);
    for (let i = 0; i < n; i++) this.look(i);
  }

  /** One of the sums over the boundary of groups i and j. */
  border(i: number, j: number, field: number): number {
    return this.borders.sums[pairOffset(this.borders.count, i, j) + field]!;
  }

  /**
   * Computes the price of i and j, i < j. Beyond the limit small groups merge first; even so, a
   * distant accent costs more than a similar large group.
   */
  private reckon(i: number, j: number): void {
    const p = this.groups[i];
    const q = this.groups[j];
    if (!p || !q) return;
    const at = i * this.groups.length + j;
    const around = Math.min(this.around[i]!, this.around[j]!);
    const c = mergeCost(p, q, this.borders.sums, at * SUMS_PER_PAIR, around) * this.shaken[at]!;
    const share = Math.min(p.weight, q.weight) / this.total;
    this.prices[at] =
      c <= this.limit ? c : c * Math.min(1, 0.35 + 4 * Math.sqrt(share)) + this.limit;
  }

  /** Recomputes the cheapest partner of group i. */
  private look(i: number): void {
    const n = this.groups.length;
    let [best, least] = [-1, Infinity];
    for (let j = i + 1; j < n; j++) {
      const price = this.prices[i * n + j]!;
      if (price < least) {
        least = price;
        best = j;
      }
    }
    this.nearest[i] = best;
    this.least[i] = least;
  }

  /** The pair with the lowest price, the first on ties. */
  cheapest(): Pair {
    let i = 0;
    for (let k = 1; k < this.least.length; k++) if (this.least[k]! < this.least[i]!) i = k;
    return { i, j: this.nearest[i]!, price: this.least[i]! };
  }

  /** The cheapest pair that includes one group. */
  cheapestOf(one: number): Pair {
    const n = this.groups.length;
    let best: Pair = { i: -1, j: -1, price: Infinity };
    for (let k = 0; k < n; k++) {
      const [i, j] = k < one ? [k, one] : [one, k];
      const price = this.prices[i * n + j]!;
      if (k !== one && price < best.price) best = { i, j, price };
    }
    return best;
  }

  /** Merges group j into group i. */
  merge(i: number, j: number): void {
    const n = this.groups.length;
    this.around[i]! += this.around[j]! - 2 * this.border(i, j, SUM.crossings);
    addGroup(this.groups[i]!, this.groups[j]!, 1);
    this.groups[j] = undefined;
    this.parent[j] = i;
    this.least[j] = Infinity;
    for (let k = 0; k < n; k++) {
      this.prices[k < j ? k * n + j : j * n + k] = Infinity;
      if (!this.groups[k] || k === i) continue;
      addBoundary(this.borders, i, j, k);
      this.reckon(Math.min(i, k), Math.max(i, k));
    }
    for (let k = 0; k < j; k++) {
      if (!this.groups[k]) continue;
      const price = k < i ? this.prices[k * n + i]! : Infinity;
      if (k === i || this.nearest[k] === i || this.nearest[k] === j) this.look(k);
      else if (price < this.least[k]! || (price === this.least[k]! && i < this.nearest[k]!)) {
        this.nearest[k] = i;
        this.least[k] = price;
      }
    }
    this.live--;
  }

  /** Group of each node, numbered from 0; 255 for a node without weight. */
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
