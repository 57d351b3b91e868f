import { signal } from '@preact/signals';
import type { HandResult, ManualEditJob } from '../../../workers/manual-edit.ts';
import type { PhotoJob, PhotoResult, StoredPhoto } from '../../../workers/photo.ts';
import type { Entry } from '../../book/schema/record.ts';
import { saveGathering, saveSpecimen } from '../../book/store/save-specimen.ts';
import { bookFaultWords } from '../../messages/book-faults.ts';
import { editFaultWords } from '../../messages/harmony-faults.ts';
import {
  neutralFaultWords,
  photoFaultWords,
  photographRemarkWords,
} from '../../messages/photograph-messages.ts';
import type { PhotoFault } from '../../photo/image-file.ts';
import { sharedTexts } from '../texts/shared-texts.ts';
import { job } from './job.ts';
import { today } from './locale-format.ts';
import { go } from './route.ts';
import { bookReady, showError, showNotice } from './studio.ts';
import { lookAgain, readPhotoInWorker } from './worker-jobs.ts';

/** Progress of a photograph that is being saved, gathered or examined. */
interface PhotographJob {
  /** Id of the specimen; null until the photograph is saved. */
  readonly specimen: string | null;
  readonly stage: 'keeping' | 'gathering' | 'looking';
  /** 0…1 */
  readonly done: number;
  readonly stop: () => void;
}
export const gathering = signal<PhotographJob | null>(null);

/**
 * Saves a photograph at once, opens it, and gathers its harmony.
 * @returns true when it was saved or can never be; false when it may be tried again
 */
export async function importPhotograph(file: Blob, name = ''): Promise<boolean> {
  const book = await bookReady;
  if (!book) return false;
  let kept: Promise<Entry<'specimen'> | null> = Promise.resolve(null);
  const keep = async ({ photo, small, type, width, height }: StoredPhoto) => {
    const put = await saveSpecimen(
      book,
      { bytes: photo, type, width, height },
      { bytes: small, type, width, height },
      today(),
      { name },
    );
    if (!put.ok) {
      showError(bookFaultWords(put.fault));
      return null;
    }
    if (gathering.value) gathering.value = { ...gathering.value, specimen: put.value.entry.id };
    go('harmony', put.value.entry.id);
    return put.value.entry;
  };
  const result = await gatherFrom({ file, keep: true }, null, (photo) => {
    kept = keep(photo);
  });
  const specimen = await kept;
  if (result && !result.ok) showError(faultWords(result.fault));
  else if (result && specimen) await keepResult(specimen, result);
  return specimen !== null || result?.ok === false;
}

/**
 * Gathers a harmony from a photograph with progress; aborts the previous job. Null when stopped.
 */
export const gatherFrom = (
  job: PhotoJob,
  specimen: string | null,
  onKept?: (kept: StoredPhoto) => void,
): Promise<PhotoResult | null> =>
  runPhotographJob(specimen, job.keep ? 'keeping' : 'gathering', (signal, update) =>
    readPhotoInWorker(job, {
      signal,
      onNews: (news) => {
        if (news.kind === 'done') update({ done: news.done });
        else {
          update({ stage: 'gathering' });
          onKept?.(news.kept);
        }
      },
    }),
  );

/** Examines a photograph again for one colour. Null when stopped. */
export const reexaminePhotograph = (
  job: ManualEditJob,
  specimen: string,
): Promise<HandResult | null> =>
  runPhotographJob(specimen, 'looking', (signal) => lookAgain(job, { signal }));

const reading = job({
  onStop: () => showNotice(sharedTexts.stopped),
  onError: (error) =>
    showError(photoFaultWords({ code: 'not-readable', why: (error as Error).message })),
});
/** Gives up what is under way, without a message. */
export const abortPhotographJob = reading.cancel;

async function runPhotographJob<T>(
  specimen: string | null,
  stage: PhotographJob['stage'],
  work: (signal: AbortSignal, update: (change: Partial<PhotographJob>) => void) => Promise<T>,
): Promise<T | null> {
  // A function of its own each time: by it this reading knows its state from a later one's.
  const stop = () => reading.stop();
  const isMine = () => gathering.value?.stop === stop;
  gathering.value = { specimen, stage, done: 0, stop };
  const result = await reading.run(({ signal }) =>
    work(signal, (change) => {
      if (gathering.value && isMine()) gathering.value = { ...gathering.value, ...change };
    }),
  );
  if (isMine()) gathering.value = null;
  return result;
}

async function keepResult(
  specimen: Entry<'specimen'>,
  result: Extract<PhotoResult, { ok: true }>,
): Promise<void> {
  const book = await bookReady;
  if (!book) return;
  const { gathered, remarks } = result.value;
  const sentences = [...remarks, ...gathered.remarks].map(photographRemarkWords);
  const put = await saveGathering(book, specimen, {
    gathered: { ...gathered, remarks: sentences },
  });
  if (!put.ok) showError(bookFaultWords(put.fault));
}

type FaultOf<R> =
  Extract<R, { readonly ok: false }> extends { readonly fault: infer F } ? F : never;

const WORDS = { ...editFaultWords, ...neutralFaultWords };

/**
 * The sentence for a fault of gathering, of a neutral spot or of adding a colour: what happened,
 * then what to do.
 */
export const faultWords = (fault: FaultOf<PhotoResult> | FaultOf<HandResult>): string =>
  fault.code in WORDS
    ? WORDS[fault.code as keyof typeof WORDS]
    : photoFaultWords(fault as PhotoFault);
