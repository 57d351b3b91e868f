import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { labOfOklab } from '../colour/oklab.ts';
import { type Clusters, LIGHTNESS } from './histogram-kmeans.ts';
import { MAX_COLOURS } from './region-merging.ts';
import { MAX_NODES, nodesOf } from './segmentation-run.ts';
import type { Superpixels } from './superpixels.ts';

/** Two nodes belong to one group if more than this share of the runs puts them together. */
const MIN_COOCCURRENCE = 0.5;
/** A group is kept if more than this share of the runs supports it. */
const MIN_SUPPORT = 0.5;
/**
 * A run supports a group if one of its own groups overlaps it by more than this (intersection over
 * union).
 */
const MIN_OVERLAP = 0.5;
/** Minimum confidence weight of a superpixel. */
const MIN_CONFIDENCE = 0.02;
/**
 * Sampling margin, times √n for n runs: the consensus is unstable if a group's support lies this
 * near {@link MIN_SUPPORT}, or a pair's co-occurrence this near {@link MIN_COOCCURRENCE}.
 */
const SAMPLING_MARGIN = 1;
/**
 * Only pairs in which both clusters hold more than this share of the weight count for that margin.
 */
const SOME = 0.05;
/**
 * The consensus is also unstable if the odd and the even runs give colours farther apart than this
 * (CIEDE2000).
 */
const APART = 1;
/**
 * Most groups that the pairwise clustering leaves; poorly supported ones are removed afterwards.
 */
const MAX_CLUSTERS = 16;
/** Stride of tables indexed by a run's groups. */
const ROWS = MAX_COLOURS;

/** Consensus of many segmentation runs. */
export interface Consensus {
  /** Group of each superpixel, 0…6. */
  readonly group: Uint8Array;
  /** Confidence that each superpixel belongs to its group and not to the second best, 0.02…1. */
  readonly confidence: Float64Array;
  /** More runs are unlikely to change the result. */
  readonly isStable: boolean;
}

/**
 * Consensus of seeded segmentation runs. Nodes that mostly occur together form groups; each
 * superpixel then moves to the group that it occurs with most. A group with too little support
 * merges into the one it occurs with most, least supported first.
 * @param runs group of each superpixel in each run, 0…6
 * @param wanted number of colours, or undefined to choose it automatically
 */
export function consensusOf(
  superpixels: Superpixels,
  runs: readonly Uint8Array[],
  wanted: number | undefined,
): Consensus {
  const nodes = nodesOf(superpixels, MAX_NODES, LIGHTNESS);
  const every = (odd: 0 | 1): RunSample => {
    const some = runs.filter((_, i) => i % 2 === odd);
    return { runs: some, together: cooccurrenceOf(superpixels, nodes, some) };
  };
  const [one, other] = [every(0), every(1)];
  const together = one.together.map((both, at) => both + other.together[at]!);
  const { group, confidence, nearest } = consensusOfSample(
    superpixels,
    nodes,
    { runs, together },
    wanted,
  );
  return {
    group,
    confidence,
    isStable: nearest > SAMPLING_MARGIN / Math.sqrt(runs.length) && isAlike(),
  };

  /** Whether the odd and the even runs give the same colours. */
  function isAlike(): boolean {
    const some = coloursOf(superpixels, consensusOfSample(superpixels, nodes, one, wanted));
    const others = coloursOf(superpixels, consensusOfSample(superpixels, nodes, other, wanted));
    return (
      some.length === others.length &&
      some.every((lab) => others.some((o) => deltaE00(lab, o) <= APART))
    );
  }
}

/** Segmentation runs, and how often two nodes occur together: for i < j at i × nodes + j. */
interface RunSample {
  readonly runs: readonly Uint8Array[];
  readonly together: Float64Array;
}

/** Co-occurrence of nodes: expected number of runs that put both into one group. */
function cooccurrenceOf(
  superpixels: Superpixels,
  nodes: Clusters,
  runs: readonly Uint8Array[],
): Float64Array {
  const n = nodes.count;
  const together = new Float64Array(n * n);
  const part = new Float64Array(n * ROWS);
  const share = superpixels.weight.map(
    (w, superpixel) => w / nodes.weight[nodes.ofBin[superpixel]!]!,
  );
  for (const run of runs) {
    // Share of each node in each group of the run.
    part.fill(0);
    for (let superpixel = 0; superpixel < superpixels.count; superpixel++)
      part[nodes.ofBin[superpixel]! * ROWS + run[superpixel]!]! += share[superpixel]!;
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        let both = 0;
        for (let g = 0; g < ROWS; g++) both += part[i * ROWS + g]! * part[j * ROWS + g]!;
        together[i * n + j]! += both;
      }
  }
  return together;
}

/** Confidence-weighted mean colour of each group (CIELAB, D65). */
function coloursOf(
  superpixels: Superpixels,
  { group, confidence }: Pick<Consensus, 'group' | 'confidence'>,
): Lab[] {
  const sums = Array.from({ length: Math.max(...group) + 1 }, () => [0, 0, 0, 0]);
  group.forEach((g, superpixel) => {
    const w = superpixels.weight[superpixel]! * confidence[superpixel]!;
    [
      w,
      w * superpixels.L[superpixel]!,
      w * superpixels.a[superpixel]!,
      w * superpixels.b[superpixel]!,
    ].forEach((v, i) => {
      sums[g]![i]! += v;
    });
  });
  return sums.map(([w, L, a, b]) => labOfOklab([L! / w!, a! / w!, b! / w!]));
}

/** The consensus, and its distance from the nearest threshold. */
function consensusOfSample(
  superpixels: Superpixels,
  nodes: Clusters,
  { runs, together }: RunSample,
  wanted: number | undefined,
): Pick<Consensus, 'group' | 'confidence'> & { readonly nearest: number } {
  const shares = together.map((both) => both / runs.length);
  const first = clusterByCooccurrence(nodes, shares, wanted ?? 1);
  let { of } = first;
  let nearest = wanted === undefined ? first.nearest : Infinity;
  for (;;) {
    const seen = new GroupSupport(superpixels, runs, of);
    const { count } = seen;
    const { support, closest } = seen.groups();
    const least = support.indexOf(Math.min(...support));
    if (wanted === undefined && count <= MAX_COLOURS)
      nearest = Math.min(nearest, Math.abs(support[least]! - MIN_SUPPORT));
    const enough =
      wanted === undefined
        ? support[least]! >= MIN_SUPPORT && count <= MAX_COLOURS
        : count <= wanted;
    if (enough || count === 1) return { ...seen.settled(), nearest };
    const to = closest[least]!;
    of = of.map((c) => {
      const kept = c === least ? to : c;
      return kept > least ? kept - 1 : kept;
    });
    of = new GroupSupport(superpixels, runs, of).settled().group;
  }
}

/**
 * Average-linkage clustering of the nodes by co-occurrence.
 * @param together share of the runs in which two nodes occur together; overwritten
 * @returns the group of each superpixel, and how near any pair of large clusters came to {@link
 *   MIN_COOCCURRENCE}
 */
function clusterByCooccurrence(
  nodes: Clusters,
  together: Float64Array,
  fewest: number,
): { readonly of: Uint8Array; readonly nearest: number } {
  const n = nodes.count;
  const at = (i: number, j: number) => (i < j ? i * n + j : j * n + i);
  const size = new Float64Array(n).fill(1);
  const weight = Float64Array.from(nodes.weight);
  const some = SOME * weight.reduce((sum, w) => sum + w, 0);
  let nearest = Infinity;
  const of = Uint8Array.from({ length: n }, (_, i) => i);
  let live = [...of].filter((i) => weight[i]! > 0);
  while (live.length > fewest) {
    let [first, second, most] = [-1, -1, -1];
    for (let k = 0; k < live.length; k++) {
      const row = live[k]! * n;
      for (let l = k + 1; l < live.length; l++) {
        const both = together[row + live[l]!]!;
        if (both > most) {
          most = both;
          first = live[k]!;
          second = live[l]!;
        }
      }
    }
    if (most < MIN_COOCCURRENCE && live.length <= MAX_CLUSTERS) break;
    if (Math.min(weight[first]!, weight[second]!) > some)
      nearest = Math.min(nearest, Math.abs(most - MIN_COOCCURRENCE));
    const [p, q] = [size[first]!, size[second]!];
    live = live.filter((k) => k !== second);
    for (const k of live)
      if (k !== first)
        together[at(first, k)] =
          (p * together[at(first, k)]! + q * together[at(second, k)]!) / (p + q);
    size[first] = p + q;
    weight[first]! += weight[second]!;
    for (let i = 0; i < n; i++) if (of[i] === second) of[i] = first;
  }
  const order = [...new Set(nodes.ofBin.map((node) => of[node]!))].sort((i, j) => i - j);
  return { of: nodes.ofBin.map((node) => order.indexOf(of[node]!)), nearest };
}

/** Agreement between one grouping of the superpixels and the groupings of all runs. */
class GroupSupport {
  readonly count: number;
  private readonly runs: readonly Uint8Array[];
  private readonly of: Uint8Array;
  /** Weight of each group. */
  private readonly weight: Float64Array;
  /** For each run: weight that its group g shares with group c, at g × count + c. */
  private readonly shared: readonly Float64Array[];
  /** The same, divided by the weight of group c and by the number of runs. */
  private readonly parts: readonly Float64Array[];

  constructor(superpixels: Superpixels, runs: readonly Uint8Array[], of: Uint8Array) {
    const count = Math.max(...of) + 1;
    this.runs = runs;
    this.of = of;
    this.count = count;
    this.weight = new Float64Array(count);
    for (let superpixel = 0; superpixel < of.length; superpixel++)
      this.weight[of[superpixel]!]! += superpixels.weight[superpixel]!;
    this.shared = runs.map((run) => {
      const shared = new Float64Array(ROWS * count);
      for (let superpixel = 0; superpixel < of.length; superpixel++)
        shared[run[superpixel]! * count + of[superpixel]!]! += superpixels.weight[superpixel]!;
      return shared;
    });
    const per = this.weight.map((w) => 1 / (w * runs.length));
    this.parts = this.shared.map((shared) => shared.map((both, at) => both * per[at % count]!));
  }

  /** Share of the runs that support each group, and the other group that it occurs with most. */
  groups(): { readonly support: readonly number[]; readonly closest: readonly number[] } {
    const { count, weight } = this;
    const support = new Array<number>(count).fill(0);
    const together = new Float64Array(count * count);
    for (const shared of this.shared) {
      for (let c = 0; c < count; c++) {
        let same = 0;
        for (let row = 0; row < ROWS * count; row += count) {
          const both = shared[row + c]!;
          if (both === 0) continue;
          let all = weight[c]! - both;
          for (let d = 0; d < count; d++) {
            all += shared[row + d]!;
            together[c * count + d]! += (both * shared[row + d]!) / weight[d]!;
          }
          same = Math.max(same, both / all);
        }
        if (same > MIN_OVERLAP) support[c]! += 1 / this.runs.length;
      }
    }
    const closest = support.map((_, c) => {
      let most = c === 0 ? 1 : 0;
      for (let d = 0; d < count; d++)
        if (d !== c && together[c * count + d]! > together[c * count + most]!) most = d;
      return most;
    });
    return { support, closest };
  }

  /**
   * Assigns each superpixel to the group that it occurs with most, with its confidence. The
   * grouping stays unchanged if a group would become empty.
   */
  settled(): Pick<Consensus, 'group' | 'confidence'> {
    const { count, runs, parts } = this;
    const filled = new Uint8Array(count);
    const confidence = new Float64Array(this.of.length);
    const withIt = new Float64Array(count);
    const group = this.of.map((_, superpixel) => {
      withIt.fill(0);
      for (let t = 0; t < runs.length; t++) {
        const row = runs[t]![superpixel]! * count;
        const part = parts[t]!;
        for (let c = 0; c < count; c++) withIt[c]! += part[row + c]!;
      }
      const [most, next] = firstTwo(withIt);
      const apart = withIt[most]! - (withIt[next] ?? 0);
      confidence[superpixel] = confidenceOfMargin(apart / withIt[most]!);
      filled[most] = 1;
      return most;
    });
    return { group: filled.includes(0) ? this.of : group, confidence };
  }
}

/**
 * Confidence of a superpixel: the fourth power of the relative margin between its best and
 * second-best group. A region's colour is then measured where the runs agree, whatever they make of
 * its rim. (Multiplied out, because engines differ in the last digit of `**`.)
 */
function confidenceOfMargin(part: number): number {
  const square = part * part;
  return Math.max(MIN_CONFIDENCE, square * square);
}

/** Indices of the largest and second largest value, the first on ties; −1 if there is no second. */
function firstTwo(values: Float64Array): readonly [number, number] {
  let [most, next] = [0, -1];
  for (let i = 1; i < values.length; i++)
    if (values[i]! > values[most]!) [most, next] = [i, most];
    else if (next < 0 || values[i]! > values[next]!) next = i;
  return [most, next];
}
