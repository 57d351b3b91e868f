import { forEachChunk } from '../chunked.ts';
import type { DownsampledImage } from '../photo/downsample.ts';
import { fail, ok, type Result } from '../result.ts';
import { boundaryStatistics } from './boundaries.ts';
import { type Consensus, consensusOf } from './consensus.ts';
import { colourHistogram, LIGHTNESS } from './histogram-kmeans.ts';
import { relabel, UNLABELLED } from './labels.ts';
import { prepareRuns, type RunBatch, segmentationRuns } from './segmentation-run.ts';
import { smoothImage } from './smoothing.ts';
import { type Superpixels, superpixelsOf } from './superpixels.ts';

/** Regions of an image, and how sure each cell's region is. */
export interface Segmentation {
  /** Region of each cell, 0…6, or {@link UNLABELLED}. */
  readonly label: Uint8Array;
  /** Superpixel of each cell; for excluded cells the number of superpixels. */
  readonly superpixelOf: Uint16Array;
  /** Confidence that each superpixel belongs to its region, 0…1. */
  readonly confidence: Float64Array;
}

/** Why there are no regions: nothing is included, or the user stopped it. */
export interface SegmentationFault {
  readonly code: 'empty' | 'stopped';
}

export interface SegmentationOptions {
  /** Number of regions, 1…7, or undefined to choose it automatically. */
  readonly regions: number | undefined;
  /** Called with progress 0…1. */
  readonly onProgress?: ((done: number) => void) | undefined;
  /** Polled now and then; true ends the job with the fault `stopped`. */
  readonly stopped?: (() => boolean) | undefined;
}

/** Consensus sample sizes: numbers of runs, increased until the consensus is stable. */
const CONSENSUS_SIZES = [8, 64, 256];

/** Segments an image: each region is one object in light and shadow. Deterministic. */
export function segmentImage(
  image: DownsampledImage,
  options: SegmentationOptions,
): Result<Segmentation, SegmentationFault> {
  const steps = segmentStepwise(image, options);
  for (let step = steps.next(); ; ) {
    if (step.done) return step.value;
    step = steps.next(segmentationRuns(step.value));
  }
}

/**
 * The same as a generator, for a shell with a second thread: it yields batches of segmentation runs
 * and receives their results in order. The result does not depend on where they ran.
 */
export function* segmentStepwise(
  image: DownsampledImage,
  { regions, onProgress, stopped }: SegmentationOptions,
): Generator<RunBatch, Result<Segmentation, SegmentationFault>, readonly Uint8Array[]> {
  if (image.includedPixels === 0) return fail({ code: 'empty' });
  const smoothed = smoothImage(image);
  const bins = colourHistogram(smoothed, image.pixelCounts);
  const superpixels = superpixelsOf(bins, LIGHTNESS);
  if (stopped?.()) return fail({ code: 'stopped' });
  onProgress?.(0.375);

  const superpixelOf = new Uint16Array(image.L.length);
  forEachChunk(superpixelOf.length, (from, to) =>
    superpixelOfCells(bins.ofCell, superpixels, from, to, superpixelOf),
  );
  const { width, height } = image;
  const boundaries = boundaryStatistics(smoothed, width, height, superpixelOf, superpixels.count);
  const input = prepareRuns(superpixels, boundaries, regions);
  const runs: Uint8Array[] = [];
  let consensus: Consensus;
  let round = 0;
  do {
    if (stopped?.()) return fail({ code: 'stopped' });
    onProgress?.(0.5 + (0.5 * round) / CONSENSUS_SIZES.length);
    runs.push(...(yield { input, from: runs.length, to: CONSENSUS_SIZES[round]! }));
    consensus = consensusOf(superpixels, runs, regions);
  } while (!consensus.isStable && ++round < CONSENSUS_SIZES.length);
  const { group, confidence } = consensus;
  const label = new Uint8Array(superpixelOf.length);
  const labels = new Uint8Array(superpixels.count + 1).fill(UNLABELLED);
  labels.set(group);
  forEachChunk(label.length, (from, to) => relabel(labels, superpixelOf, from, to, label));
  if (stopped?.()) return fail({ code: 'stopped' });
  onProgress?.(1);
  return ok({ label, superpixelOf, confidence });
}

/** Superpixel of each cell; `count` for excluded cells. */
function superpixelOfCells(
  binOf: Int32Array,
  { count, ofBin }: Pick<Superpixels, 'count' | 'ofBin'>,
  from: number,
  to: number,
  superpixelOf: Uint16Array,
): void {
  for (let i = from; i < to; i++) {
    const bin = binOf[i]!;
    superpixelOf[i] = bin < 0 ? count : ofBin[bin]!;
  }
}
