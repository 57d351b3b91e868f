import { portableExp } from '../exponential.ts';
import { seededRandom } from '../random.ts';
import { type BoundaryList, boundariesOfNodes, SUMS_PER_PAIR } from './boundaries.ts';
import { LIGHTNESS, weightedKMeans } from './histogram-kmeans.ts';
import { type ImageStatistics, imageStatistics } from './image-statistics.ts';
import { mergeRegions } from './region-merging.ts';
import { clusteringSpace, type Superpixels } from './superpixels.ts';
import { splitByVariance } from './variance-split.ts';

/** Fewest and most nodes of a run. */
const MIN_NODES = 48;
export const MAX_NODES = 64;
/** Perturbation of superpixel weights: largest change of their logarithm. */
const SHAKEN = 0.5;
/** Relative perturbation of the weight of lightness. */
const TILTED = 0.15;

/** Cloneable input of a batch of runs, for another thread; without the bins of the superpixels. */
interface RunInput {
  readonly superpixels: Pick<Superpixels, 'count' | 'weight' | 'cells' | 'L' | 'a' | 'b'>;
  readonly edges: BoundaryList;
  readonly scene: ImageStatistics;
  /** Number of colours, or undefined to choose it automatically. */
  readonly wanted: number | undefined;
}

/** Prepares segmentation runs over superpixels. */
export function prepareRuns(
  { count, weight, cells, L, a, b }: Superpixels,
  edges: BoundaryList,
  wanted: number | undefined,
): RunInput {
  const superpixels = { count, weight, cells, L, a, b };
  const room = new Float64Array(MAX_NODES * MAX_NODES * SUMS_PER_PAIR);
  const { nodes, borders } = nodesAndBorders(superpixels, edges, MAX_NODES, LIGHTNESS, room);
  return { superpixels, edges, scene: imageStatistics(nodes, borders), wanted };
}

/** A batch: the runs with the seeds `from` … `to` − 1. */
export interface RunBatch {
  readonly input: RunInput;
  readonly from: number;
  readonly to: number;
}

/**
 * Executes a batch of seeded runs.
 * @returns for each run in order, the group of each superpixel, 0…6
 */
export function segmentationRuns({ input, from, to }: RunBatch): Uint8Array[] {
  const runs = new SegmentationRuns(input);
  return Array.from({ length: to - from }, (_, i) => runs.run(from + i));
}

/** Executes runs over the same superpixels. */
class SegmentationRuns {
  private readonly input: RunInput;
  /** Buffers for the boundaries of nodes and a copy, reused by every run. */
  private readonly borders = new Float64Array(MAX_NODES * MAX_NODES * SUMS_PER_PAIR);
  private readonly copy = new Float64Array(MAX_NODES * MAX_NODES * SUMS_PER_PAIR);

  constructor(input: RunInput) {
    this.input = input;
  }

  /**
   * One seeded segmentation run. The seed perturbs where nodes are cut and what merges cost.
   * Regions found in most runs are real; those found in a few are unstable.
   * @returns the group of each superpixel, 0…6
   */
  run(seed: number): Uint8Array {
    const { superpixels, edges, scene, wanted } = this.input;
    const next = seededRandom(seed);
    const [many, tilt, limit, far] = quasiRandom(seed);
    const k = Math.round(MIN_NODES + (MAX_NODES - MIN_NODES) * many);
    const lightness = LIGHTNESS * (1 - TILTED + 2 * TILTED * tilt);
    const weight = superpixels.weight.map((w) => w * portableExp(SHAKEN * (2 * next() - 1)));
    const { nodes, borders, nodeOf } = nodesAndBorders(
      superpixels,
      edges,
      k,
      lightness,
      this.borders,
      weight,
    );
    const group = mergeRegions({ nodes, borders, scene }, this.copy, { limit, far, next }, wanted);
    return nodeOf.map((node) => group[node]!);
  }
}

/** Clusters superpixels into at most k nodes, with their boundaries; these use `room`. */
function nodesAndBorders(
  superpixels: RunInput['superpixels'],
  edges: BoundaryList,
  k: number,
  lightness: number,
  room: Float64Array,
  weight?: Float64Array,
) {
  const { ofBin: nodeOf, ...nodes } = nodesOf(superpixels, k, lightness, weight);
  const cells = new Float64Array(nodes.count);
  for (let superpixel = 0; superpixel < superpixels.count; superpixel++)
    cells[nodeOf[superpixel]!]! += superpixels.cells[superpixel]!;
  const borders = boundariesOfNodes(edges, nodeOf, nodes.count, room);
  return { nodes: { ...nodes, cells }, borders, nodeOf };
}

/** Real root of x⁵ = x + 1, the base of the R₄ sequence. */
const STEP = 1.1673039782614187;

/**
 * Four quasi-random numbers 0…1: over any range of seeds they fill the space more evenly than
 * random ones. They perturb the parameters that affect a whole run.
 * @see M. Roberts, 2018, on the R sequences (from memory)
 */
const quasiRandom = (seed: number) =>
  [1, 2, 3, 4].map((power) => (0.5 + (seed + 1) / STEP ** power) % 1) as [
    number,
    number,
    number,
    number,
  ];

/** Clusters superpixels into at most k nodes; `ofBin` is the node of each superpixel. */
export function nodesOf(
  superpixels: RunInput['superpixels'],
  k: number,
  lightness: number,
  weight = superpixels.weight,
) {
  const { centres } = splitByVariance({ ...clusteringSpace(superpixels, lightness), weight }, k);
  // Assign only, with a single pass: the cuts already follow the scene, and moving the centres
  // would make them unstable.
  return weightedKMeans({ ...superpixels, bins: superpixels.count }, k, lightness, 1, centres);
}
