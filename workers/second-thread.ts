import type { RowRange } from '../src/photo/area-average.ts';
import {
  type DownsampledRows,
  type DownsampleOptions,
  Downsampler,
} from '../src/photo/downsample.ts';
import type { Pixels } from '../src/photo/pixels.ts';
import { type RunBatch, segmentationRuns } from '../src/segmentation/segmentation-run.ts';
import type { JobResult } from './job-protocol.ts';
import { readFrame } from './row-strips.ts';

/** Options for downsampling a photograph. */
export type DownsampleLook = Pick<Pixels, 'space'> & Pick<DownsampleOptions, 'mask' | 'adapt'>;

/** A range of rows of the work image. The worker that receives the frame closes it. */
interface AverageJob {
  readonly kind: 'average';
  readonly frame: VideoFrame;
  readonly look: DownsampleLook;
  readonly part: RowRange;
}

/** A batch of segmentation runs. */
interface RunsJob extends RunBatch {
  readonly kind: 'runs';
}

/** A job for the second thread. */
export type SecondThreadJob = AverageJob | RunsJob;

/** Downsamples a range of rows of a photograph; the caller closes the frame. */
export async function average({
  frame,
  look,
  part,
}: Omit<AverageJob, 'kind'>): Promise<Downsampler> {
  const { codedWidth: width, codedHeight: height } = frame;
  const making = new Downsampler({ width, height, space: look.space }, look, part);
  await readFrame(frame, making.lines, (data, rows, order) => making.add(data, rows, order));
  return making;
}

/** Executes a job on the second thread; transfers the buffers of its result. */
export async function runOnSecondThread(
  job: SecondThreadJob,
): Promise<JobResult<DownsampledRows | Uint8Array[]>> {
  if (job.kind === 'runs') return { value: segmentationRuns(job) };
  try {
    const value = (await average(job)).finishedRows();
    const { L, a, b, pixelCounts: seen } = value;
    return { value, transfer: [L.buffer, a.buffer, b.buffer, seen.buffer] };
  } finally {
    job.frame.close();
  }
}
