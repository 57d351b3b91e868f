import {
  type GatherFault,
  type GatherOptions,
  harmonyOf,
  segmentationOptions,
} from '../src/harmony/gather.ts';
import type { Gathered } from '../src/harmony/harmony.ts';
import {
  type DownsampledImage,
  type DownsampledRows,
  Downsampler,
  downsampledSize,
} from '../src/photo/downsample.ts';
import type { Result } from '../src/result.ts';
import { segmentStepwise } from '../src/segmentation/segment-image.ts';
import { type RunBatch, segmentationRuns } from '../src/segmentation/segmentation-run.ts';
import { WarmWorker } from './job-protocol.ts';
import { frameOf, readStrips } from './row-strips.ts';
import { average, type DownsampleLook, type SecondThreadJob } from './second-thread.ts';

/** Number of pixels from which a second thread downsamples half of a photograph. */
const HALVED = 2e6;
/** Batches of up to this many runs end before a second thread has started. */
const FEW = 8;
/** Least time in ms that the second thread may take after the first has finished. */
const LEAST_PATIENCE_MS = 500;

const second = new WarmWorker(
  () => new Worker(new URL('./second-thread.worker.ts', import.meta.url), { type: 'module' }),
);
const hasSecond = navigator.hardwareConcurrency > 1 && typeof Worker !== 'undefined';

/** Starts the second thread for a photograph that is about to be read. */
export function warmSecondThread(): void {
  if (hasSecond) second.warm();
}

/**
 * The work image of a bitmap, and whether this browser adds noise to canvas readback. If a second
 * thread can read the same memory, it downsamples the lower half; the sums are exact, so the result
 * is the same.
 */
export async function downsampleBitmap(
  bitmap: ImageBitmap,
  isWide: boolean,
  look: DownsampleLook,
): Promise<{ readonly work: DownsampledImage; readonly isPerturbed: boolean }> {
  const { width, height } = bitmap;
  const [, rows] = downsampledSize(width, height);
  const isLarge = width * height >= HALVED && rows > 1;
  const frame = hasSecond && isLarge ? frameOf(bitmap, isWide) : null;
  if (!frame) {
    const making = new Downsampler({ width, height, space: look.space }, look);
    const isPerturbed = await readStrips(bitmap, isWide, (data, lines, order) =>
      making.add(data, lines, order),
    );
    return { work: making.mergeRows(), isPerturbed };
  }
  try {
    const middle = rows >> 1;
    const upper = { frame, look, part: { from: 0, to: middle } };
    const lower = { frame, look, part: { from: middle, to: rows } };
    const [making, part] = await onTwoThreads<Downsampler, DownsampledRows>(
      () => average(upper),
      { kind: 'average', ...lower },
      async () => (await average(lower)).finishedRows(),
    );
    return { work: making.mergeRows([part]), isPerturbed: false };
  } finally {
    frame.close();
  }
}

/**
 * Gathers the harmony of a downsampled image; a second thread executes half of the segmentation
 * runs, with the same results.
 * @throws RangeError if `colours` is not an integer 1…7
 */
export async function gatherDownsampled(
  image: DownsampledImage,
  options: Pick<GatherOptions, 'colours' | 'onProgress'> & {
    readonly width: number;
    readonly height: number;
  },
): Promise<Result<Gathered, GatherFault>> {
  const { width, height, colours, onProgress } = options;
  const steps = segmentStepwise(image, segmentationOptions({ colours }, onProgress));
  let step = steps.next();
  while (!step.done) step = steps.next(await runsOnTwoThreads(step.value));
  const harmony = harmonyOf(image, step.value, { width, height, colours });
  if (harmony.ok) onProgress?.(1);
  return harmony;
}

async function runsOnTwoThreads(wanted: RunBatch): Promise<readonly Uint8Array[]> {
  const { from, to } = wanted;
  if (!hasSecond || to - from <= FEW) return segmentationRuns(wanted);
  const middle = (from + to) >> 1;
  const [mine, theirs] = [
    { ...wanted, to: middle },
    { ...wanted, from: middle },
  ];
  const both = await onTwoThreads<Uint8Array[], Uint8Array[]>(
    () => segmentationRuns(mine),
    { kind: 'runs', ...theirs },
    () => segmentationRuns(theirs),
  );
  return both.flat();
}

/**
 * Runs one half here and the other on the second thread; if that fails or takes too long, runs the
 * other half here too.
 */
async function onTwoThreads<A, B>(
  own: () => A | Promise<A>,
  theirs: SecondThreadJob,
  instead: () => B | Promise<B>,
): Promise<[A, B]> {
  const giveUp = new AbortController();
  const answer = second
    .run<SecondThreadJob, B, never>(theirs, { signal: giveUp.signal })
    .catch(() => null);
  const began = performance.now();
  const mine = await own();
  const patience = LEAST_PATIENCE_MS + 2 * (performance.now() - began);
  const late = setTimeout(() => giveUp.abort(), patience);
  const other = (await answer) ?? (await instead());
  clearTimeout(late);
  return [mine, other];
}
