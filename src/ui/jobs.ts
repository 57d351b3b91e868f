import type { HandJob, HandResult } from '../../workers/hand.ts';
import { type JobOptions, runJob } from '../../workers/jobs.ts';
import type { MixtureJob, MixtureNews, MixtureResult } from '../../workers/mixture.ts';
import type { PhotoJob, PhotoNews, PhotoResult } from '../../workers/photo.ts';

const photoWorker = () =>
  new Worker(new URL('../../workers/photo.worker.ts', import.meta.url), { type: 'module' });

/** Reads a photograph and gathers its harmony, away from the page's own thread. */
export const readPhoto = (job: PhotoJob, options: JobOptions<PhotoNews>): Promise<PhotoResult> =>
  runJob(photoWorker, job, options);

/** Looks at a photograph again for one colour. */
export const lookAgain = (job: HandJob, options: JobOptions<never>): Promise<HandResult> =>
  runJob(photoWorker, job, options);

/** Finds mixtures, away from the page's own thread. */
export const findMixtures = (
  job: MixtureJob,
  options: JobOptions<MixtureNews>,
): Promise<MixtureResult> =>
  runJob(
    () =>
      new Worker(new URL('../../workers/mixture.worker.ts', import.meta.url), { type: 'module' }),
    job,
    options,
  );

/** Whether an error is only the painter's own word to stop. */
export const isStop = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';
