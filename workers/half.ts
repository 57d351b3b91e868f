import { type TrialsWanted, trialsOf } from '../src/harmony/trial.ts';
import type { Span } from '../src/photo/average.ts';
import type { Pixels } from '../src/photo/pixels.ts';
import { WorkMaking, type WorkOptions, type WorkPart } from '../src/photo/work.ts';
import type { Handed } from './jobs.ts';
import { readFrame } from './strips.ts';

/** How a photograph is looked at. */
export type Look = Pick<Pixels, 'space'> & Pick<WorkOptions, 'mask' | 'adapt'>;

/** Rows of cells of a photograph's work image, and the frame that whoever has the job closes. */
export interface AverageJob {
  readonly kind: 'average';
  readonly frame: VideoFrame;
  readonly look: Look;
  readonly part: Span;
}

/** Some of the trials that a gathering waits for. */
export interface TrialsJob extends TrialsWanted {
  readonly kind: 'trials';
}

/** Half of something, for a second thread. */
export type HalfJob = AverageJob | TrialsJob;

/** Averages some rows of a photograph. */
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

/** The job of a second thread. */
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
