import type {
  CalibrateJob,
  CalibrateNews,
  FitJob,
  FitResult,
  Read,
  ReadJob,
  TouchJob,
} from '../../../workers/calibration.ts';
import type { DraperyJob, DraperyNews } from '../../../workers/drapery.ts';
import { type JobOptions, runJob, WarmWorker } from '../../../workers/job-protocol.ts';
import type { HandResult, ManualEditJob } from '../../../workers/manual-edit.ts';
import type { MixtureKind, MixtureNews, MixtureWork } from '../../../workers/mixture.ts';
import type { PhotoJob, PhotoNews, PhotoResult } from '../../../workers/photo.ts';
import type { WarmUpJob } from '../../../workers/warm-up.ts';
import type { Shelf } from '../../pigment/shelf.ts';

const photoWorker = new WarmWorker(
  () =>
    new Worker(new URL('../../../workers/photo.worker.ts', import.meta.url), { type: 'module' }),
);

/** Starts the photograph worker, ready for a photograph that is about to be chosen. */
export const startPhotoWorker = (): void => photoWorker.warm();

/** Controls the one warm-up run; none is made after the first photograph. */
let rehearsal: AbortController | undefined;

/**
 * Warms up the worker on a synthetic image while the painter chooses a photograph, because
 * compilation takes most of the first one's time. A photograph that comes earlier aborts it.
 */
export async function warmUpPhotoWorker(): Promise<void> {
  if (rehearsal) return;
  rehearsal = new AbortController();
  const { signal } = rehearsal;
  try {
    await photoWorker.run<WarmUpJob, null, never>({ act: 'rehearse' }, { signal });
  } catch {
    // Aborted for a photograph, or not possible here: the first photograph only takes longer.
  }
}

/** Reads a photograph and gathers its harmony in a worker. */
export function readPhotoInWorker(
  job: PhotoJob,
  options: JobOptions<PhotoNews>,
): Promise<PhotoResult> {
  rehearsal ??= new AbortController();
  rehearsal.abort();
  return photoWorker.run(job, options);
}

/** Examines a photograph again for one colour, in a worker. */
export const lookAgain = (job: ManualEditJob, options: JobOptions<never>): Promise<HandResult> =>
  photoWorker.run(job, options);

/** Runs one job of the mixture search in a worker. */
export const runMixtureJob = <K extends MixtureKind>(
  kind: K,
  takes: MixtureWork[K]['takes'] & { readonly shelf: Shelf },
  options: JobOptions<MixtureNews>,
): Promise<MixtureWork[K]['gives']> =>
  runJob(
    () =>
      new Worker(new URL('../../../workers/mixture.worker.ts', import.meta.url), {
        type: 'module',
      }),
    { ...takes, kind },
    options,
  );

/** Computes cloths in a worker; each is reported as soon as it is ready. */
export const drapeCloths = (job: DraperyJob, options: JobOptions<DraperyNews>): Promise<null> =>
  runJob(
    () =>
      new Worker(new URL('../../../workers/drapery.worker.ts', import.meta.url), {
        type: 'module',
      }),
    job,
    options,
  );

const calibrating = <T>(job: CalibrateJob, options: JobOptions<CalibrateNews>): Promise<T> =>
  runJob(
    () =>
      new Worker(new URL('../../../workers/calibration.worker.ts', import.meta.url), {
        type: 'module',
      }),
    job,
    options,
  );

/** Reads a photographed swatch card, or the marked points of a photograph, in a worker. */
export const readSwatches = (
  job: ReadJob | TouchJob,
  options: JobOptions<CalibrateNews>,
): Promise<Read> => calibrating(job, options);

/** Fits the curves of a shelf's paints to the evidence, in a worker. */
export const fitPaintsInWorker = (
  job: FitJob,
  options: JobOptions<CalibrateNews>,
): Promise<FitResult> => calibrating(job, options);

/** Whether an error is an abort: the painter stopped the work, or newer work took its place. */
export const isAbort = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';
