import { signal } from '@preact/signals';
import type { Made } from '../../../../workers/copy.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { type FileOutcome, saveFile, shareFile } from '../../components/save-file.ts';
import { lastCopyTime } from '../../state/storage-promise.ts';
import { book, showError, showNotice } from '../../state/studio.ts';
import { isAbort } from '../../state/worker-jobs.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { type CopySession, openCopySession } from './copy-session.ts';

/** State of a copy being made. */
type CopyState =
  | { readonly stage: 'making'; readonly done: number; readonly stop: () => void }
  | {
      readonly stage: 'ready' | 'saved';
      readonly file: File;
      readonly made: Made;
      /** Number of this volume, from 1, of `parts`. */
      readonly part: number;
      readonly parts: number;
    };
/** The current copy: of the whole book when `of` is null, otherwise of that entry. */
export const copyInProgress = signal<{
  readonly of: string | null;
  readonly now: CopyState;
} | null>(null);

let volumes: readonly (readonly string[])[] = [];

/** Makes a copy of the whole book, or its first volume when it needs several. */
export const makeBookCopy = (): Promise<void> =>
  runCopyJob(null, async (talk, onNews) => {
    const plan = await talk.ask({ kind: 'plan' });
    if (plan.kind !== 'plan') return null;
    if (!plan.result.ok) return fault(plan.result.fault);
    volumes = plan.result.value;
    return one(talk, 1, onNews);
  });

export const makeNextPart = (part: number): Promise<void> =>
  runCopyJob(null, (talk, onNews) => one(talk, part, onNews));

/** Makes a copy of one entry and the entries that it was made from. */
export const makeEntryCopy = (id: string, fileName: string): Promise<void> =>
  runCopyJob(id, async (talk, onNews) => {
    const answer = await talk.ask({ kind: 'make', ids: [id] }, onNews);
    if (answer.kind !== 'make') return null;
    if (!answer.result.ok) return fault(answer.result.fault);
    return ready(answer.result.value, fileName, 1, 1);
  });

export function closeMaking(): void {
  if (copyInProgress.value?.now.stage === 'making') copyInProgress.value.now.stop();
  copyInProgress.value = null;
}

export async function deliverCopy(how: 'save' | 'share'): Promise<void> {
  const held = copyInProgress.value;
  if (!held || held.now.stage === 'making') return;
  const { file, made, part, parts } = held.now;
  const handed: FileOutcome = await (how === 'save' ? saveFile(file) : shareFile(file));
  if (handed === 'failed') return showError(bookTexts.fileFailed);
  if (handed === 'left') return;
  copyInProgress.value = { of: held.of, now: { ...held.now, stage: 'saved' } };
  if (held.of !== null || part < parts || !book.value) return;
  const { noteCopy } = await import('../../../book/transfer/copies.ts');
  const noted = await noteCopy(book.value, made.made);
  if (noted.ok) lastCopyTime.value = made.made;
}

type Ready = Extract<CopyState, { stage: 'ready' | 'saved' }>;

async function runCopyJob(
  of: string | null,
  job: (talk: CopySession, onNews: (done: number) => void) => Promise<Ready | null>,
): Promise<void> {
  closeMaking();
  const talk = openCopySession();
  const stop = () => talk.end();
  const mine = () =>
    copyInProgress.value?.now.stage === 'making' && copyInProgress.value.now.stop === stop;
  copyInProgress.value = { of, now: { stage: 'making', done: 0, stop } };
  try {
    const made = await job(talk, (done) => {
      if (mine()) copyInProgress.value = { of, now: { stage: 'making', done, stop } };
    });
    if (mine()) copyInProgress.value = made && { of, now: made };
  } catch (error) {
    if (mine()) copyInProgress.value = null;
    if (isAbort(error)) showNotice(bookTexts.copyStopped);
    else showError(bookFaultWords({ code: 'not-read', detail: String((error as Error)?.message) }));
  } finally {
    talk.end();
  }
}

async function one(
  talk: CopySession,
  part: number,
  onNews: (done: number) => void,
): Promise<Ready | null> {
  const parts = Math.max(1, volumes.length);
  const volume = parts > 1 ? { volume: volumes[part - 1]! } : {};
  const answer = await talk.ask({ kind: 'make', ...volume }, onNews);
  if (answer.kind !== 'make') return null;
  if (!answer.result.ok) return fault(answer.result.fault);
  const day = answer.result.value.made.slice(0, 10);
  const name = parts > 1 ? `kingcup-book-${day}-${part}-of-${parts}` : `kingcup-book-${day}`;
  return ready(answer.result.value, `${name}.zip`, part, parts);
}

const ready = (made: Made, name: string, part: number, parts: number): Ready => ({
  stage: 'ready',
  file: new File([made.file], name, { type: 'application/zip' }),
  made,
  part,
  parts,
});

function fault(why: Parameters<typeof bookFaultWords>[0]): null {
  showError(bookFaultWords(why));
  return null;
}
