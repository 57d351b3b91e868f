import { type TrialsWanted, trialsOf } from '../src/harmony/trial.ts';
import type { Span } from '../src/photo/average.ts';
import type { Pixels } from '../src/photo/pixels.ts';
import { WorkMaking, type WorkOptions, type WorkPart } from '../src/photo/work.ts';
import type { Handed } from './jobs.ts';
import { readFrame } from './strips.ts';

/** Options for downsampling a photograph. */
export type Look = Pick<Pixels, 'space'> & Pick<WorkOptions, 'mask' | 'adapt'>;

/** A range of rows of the work image. The worker that receives the frame closes it. */
export interface AverageJob {
  readonly kind: 'average';
  readonly frame: VideoFrame;
  readonly look: Look;
  readonly part: Span;
}

/** A batch of segmentation runs. */
export interface TrialsJob extends TrialsWanted {
  readonly kind: 'trials';
}

/** A job for the second thread. */
export type HalfJob = AverageJob | TrialsJob;

/** Downsamples a range of rows of a photograph; the caller closes the frame. */
export async function average({
  frame,
  look,
  part,
}: Omit<AverageJob, 'kind'>): Promise<WorkMaking> {
  const { codedWidth: width, codedHeight: height } = frame;
  const making = new WorkMaking({ width, height, space: look.space }, look, part);
  await readFrame(frame, making.lines, (data, rows, order) => making.add(data, rows, order));
  return making;
}

/** Executes a job on the second thread; transfers the buffers of its result. */
export async function half(job: HalfJob): Promise<Handed<WorkPart | Uint8Array[]>> {
  if (job.kind === 'trials') return { value: trialsOf(job) };
  try {
    const value = (await average(job)).part();
    const { L, a, b, seen } = value;
    return { value, transfer: [L.buffer, a.buffer, b.buffer, seen.buffer] };
  } finally {
    job.frame.close();
  }
}
