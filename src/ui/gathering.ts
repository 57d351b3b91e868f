import { signal } from '@preact/signals';
import type { KeptPhoto, PhotoJob, PhotoResult } from '../../workers/photo.ts';
import { bookFaultWords } from '../book/faults.ts';
import { keepGathering, keepPhotograph } from '../book/keep.ts';
import type { Entry } from '../book/record.ts';
import { gatherFaultWords } from '../harmony/faults.ts';
import { photoFaultWords } from '../photo/file.ts';
import { isStop, readPhoto } from './jobs.ts';
import { go } from './route.ts';
import { complain, opening, tell } from './studio.ts';
import { say } from './words.ts';

/** A photograph being read or gathered. */
export interface Gathering {
  /** The specimen; null until the photograph is kept. */
  readonly specimen: string | null;
  readonly stage: 'keeping' | 'gathering';
  /** 0…1 */
  readonly done: number;
  readonly stop: () => void;
}
export const gathering = signal<Gathering | null>(null);

const today = (): string => new Date().toLocaleDateString('sv');

/** Keeps a photograph at once, then gathers its harmony; the painter is taken to it as soon as it is kept. */
export async function bringPhotograph(file: Blob, name = ''): Promise<void> {
  const book = await opening;
  if (!book) return;
  let kept: Promise<Entry<'specimen'> | null> = Promise.resolve(null);
  const keep = async ({ photo, small, type, width, height }: KeptPhoto) => {
    const put = await keepPhotograph(
      book,
      { bytes: photo, type, width, height },
      { bytes: small, type, width, height },
      today(),
      { name },
    );
    if (!put.ok) {
      complain(bookFaultWords(put.fault));
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
  if (result && !result.ok) complain(faultWords(result.fault));
  else if (result && specimen) await keepResult(specimen, result);
}

/** Gathers a kept specimen anew, perhaps with another number of colours. */
export async function gatherAgain(specimen: Entry<'specimen'>, colours?: number): Promise<void> {
  const book = await opening;
  if (!book) return;
  const photo = await book.photograph(specimen.body.photo.file);
  if (!photo.ok) return complain(bookFaultWords(photo.fault));
  const file = new Blob([photo.value.bytes], { type: photo.value.type });
  const result = await gatherFrom(
    { file, keep: false, ...(colours === undefined ? {} : { colours }) },
    specimen.id,
  );
  if (result && !result.ok) complain(faultWords(result.fault));
  else if (result) await keepResult(specimen, result);
}

async function gatherFrom(
  job: PhotoJob,
  specimen: string | null,
  onKept?: (kept: KeptPhoto) => void,
): Promise<PhotoResult | null> {
  gathering.value?.stop();
  const controller = new AbortController();
  const mine: Gathering = {
    specimen,
    stage: job.keep ? 'keeping' : 'gathering',
    done: 0,
    stop: () => controller.abort(),
  };
  gathering.value = mine;
  const update = (change: Partial<Gathering>) => {
    if (gathering.value?.stop === mine.stop) gathering.value = { ...gathering.value, ...change };
  };
  try {
    return await readPhoto(job, {
      signal: controller.signal,
      onNews: (news) => {
        if (news.kind === 'done') update({ done: news.done });
        else {
          update({ stage: 'gathering' });
          onKept?.(news.kept);
        }
      },
    });
  } catch (error) {
    if (isStop(error)) tell(say.stopped);
    else complain(photoFaultWords({ code: 'not-readable', why: (error as Error).message }));
    return null;
  } finally {
    if (gathering.value?.stop === mine.stop) gathering.value = null;
  }
}

async function keepResult(
  specimen: Entry<'specimen'>,
  result: Extract<PhotoResult, { ok: true }>,
): Promise<void> {
  const book = await opening;
  if (!book) return;
  const { gathered, remarks } = result.value;
  const put = await keepGathering(book, specimen, { gathered: { ...gathered, remarks } });
  if (!put.ok) complain(bookFaultWords(put.fault));
}

type Fault = Extract<PhotoResult, { ok: false }>['fault'];

const faultWords = (fault: Fault): string =>
  fault.code === 'transparent' || fault.code === 'all-rubbed-out' || fault.code === 'stopped'
    ? gatherFaultWords[fault.code]
    : photoFaultWords(fault);
