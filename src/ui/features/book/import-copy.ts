import { signal } from '@preact/signals';
import type { ImportEffect, ImportPreview } from '../../../../workers/copy.ts';
import type { BookFault } from '../../../book/schema/book-fault.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { fail, type Result } from '../../../result.ts';
import { showError, showNotice } from '../../state/studio.ts';
import { isAbort } from '../../state/worker-jobs.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { type CopySession, openCopySession } from './copy-session.ts';

/** State of an import. */
type CopyImport =
  | { readonly stage: 'looking' | 'bringing'; readonly done: number; readonly stop: () => void }
  | { readonly stage: 'looked'; readonly looked: ImportPreview };
export const copyImport = signal<CopyImport | null>(null);

/** Session with the worker that has opened the copy. */
let talk: CopySession | null = null;
/** Session that can undo the last import. */
let merged: CopySession | null = null;

/** Number of entries that a merge changes. */
export const changedEntryCount = ({
  added,
  changed,
  deleted,
  kept,
  settled,
}: ImportEffect): number =>
  added.count + changed.count + deleted.count + kept.count + settled.count;

/** Opens and validates a copy and previews its changes; does not change the book. */
export async function previewCopyFile(file: Blob): Promise<void> {
  discardPreview();
  const mine = openCopySession();
  talk = mine;
  const stop = () => mine.end();
  copyImport.value = { stage: 'looking', done: 0, stop };
  const show = (next: CopyImport | null) => {
    if (talk === mine) copyImport.value = next;
  };
  try {
    const answer = await mine.ask({ kind: 'look', file }, (done) =>
      show({ stage: 'looking', done, stop }),
    );
    if (answer.kind !== 'look') return;
    const { result } = answer;
    if (result.ok) return show({ stage: 'looked', looked: result.value });
    show(null);
    mine.end();
    showError(bookFaultWords(result.fault));
  } catch (error) {
    show(null);
    mine.end();
    if (isAbort(error)) showNotice(bookTexts.broughtStopped);
    else showError(bookTexts.bringFailed);
  }
}

/**
 * Merges the previewed copy: all of it or nothing.
 * @returns true once it is in the book
 */
export async function importPreviewedCopy(): Promise<boolean> {
  const mine = talk;
  if (!mine || copyImport.value?.stage !== 'looked') return false;
  // Request a stop instead of ending the worker: only the merge knows whether it was already
  // complete.
  const stop = () => mine.stop();
  copyImport.value = { stage: 'bringing', done: 0, stop };
  try {
    const answer = await mine.ask({ kind: 'bring' }, (done) => {
      if (talk === mine) copyImport.value = { stage: 'bringing', done, stop };
    });
    if (answer.kind !== 'bring') return false;
    copyImport.value = null;
    talk = null;
    if (answer.result.ok) {
      merged?.end();
      merged = mine;
      showNotice(bookTexts.brought(changedEntryCount(answer.result.value)), () => takeBack(mine));
      return true;
    }
    mine.end();
    const { fault } = answer.result;
    if (fault.code === 'stopped') showNotice(bookTexts.broughtStopped);
    else showError(bookFaultWords(fault));
  } catch (error) {
    copyImport.value = null;
    if (!isAbort(error)) showError(bookFaultWords({ code: 'not-written', detail: String(error) }));
  }
  return false;
}

async function takeBack(from: CopySession): Promise<Result<null, BookFault>> {
  try {
    const answer = await from.ask({ kind: 'take back' });
    from.end();
    return answer.kind === 'take back' ? answer.result : fail({ code: 'not-found' });
  } catch {
    return fail({ code: 'not-found' });
  }
}

/** Discards the previewed copy. Does nothing during a merge. */
export function discardPreview(): void {
  if (copyImport.value?.stage === 'bringing') return;
  talk?.end();
  talk = null;
  copyImport.value = null;
}
