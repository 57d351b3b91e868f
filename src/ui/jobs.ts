import type { DraperyJob, DraperyNews } from '../../workers/drapery.ts';
import { type JobOptions, runJob } from '../../workers/jobs.ts';
import type { MixtureJob, MixtureNews, MixtureResult } from '../../workers/mixture.ts';
import type { PhotoJob, PhotoNews, PhotoResult } from '../../workers/photo.ts';

/** Reads a photograph and gathers its harmony, away from the page's own thread. */
export const readPhoto = (job: PhotoJob, options: JobOptions<PhotoNews>): Promise<PhotoResult> =>
  runJob(
    () => new Worker(new URL('../../workers/photo.worker.ts', import.meta.url), { type: 'module' }),
    job,
    options,
  );

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

/** Works out cloths; each comes as news as soon as it is ready. */
export const drapeCloths = (job: DraperyJob, options: JobOptions<DraperyNews>): Promise<null> =>
  runJob(
    () =>
      new Worker(new URL('../../workers/drapery.worker.ts', import.meta.url), { type: 'module' }),
    job,
    options,
  );

/** Whether an error is only the painter's own word to stop. */
export const isStop = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';
