import { signal } from '@preact/signals';
import type { Brought, Looked } from '../../../workers/copy.ts';
import type { BookFault } from '../../book/faults.ts';
import { bookFaultWords } from '../../book/faults.ts';
import { fail, type Result } from '../../result.ts';
import { isAbort } from '../jobs.ts';
import { complain, tell } from '../studio.ts';
import { sayBook } from '../words/book.ts';
import { type Talk, talkOfCopies } from './worker.ts';

/** State of an import. */
export type Bringing =
  | { readonly stage: 'looking' | 'bringing'; readonly done: number; readonly stop: () => void }
  | { readonly stage: 'looked'; readonly looked: Looked };
export const bringing = signal<Bringing | null>(null);

/** Session with the worker that has opened the copy. */
let talk: Talk | null = null;
/** Session that can undo the last import. */
let merged: Talk | null = null;

/** Number of entries that a merge changes. */
export const touched = ({ added, changed, deleted, kept, settled }: Brought): number =>
  added.count + changed.count + deleted.count + kept.count + settled.count;

/** Opens and validates a copy and previews its changes; does not change the book. */
export async function lookAt(file: Blob): Promise<void> {
  dropCopy();
  const mine = talkOfCopies();
  talk = mine;
  const stop = () => mine.end();
  bringing.value = { stage: 'looking', done: 0, stop };
  const show = (next: Bringing | null) => {
    if (talk === mine) bringing.value = next;
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
    complain(bookFaultWords(result.fault));
  } catch (error) {
    show(null);
    mine.end();
    if (isAbort(error)) tell(sayBook.broughtStopped);
    else complain(sayBook.bringFailed);
  }
}

/**
 * Merges the previewed copy: all of it or nothing.
 * @returns true once it is in the book
 */
export async function bringIn(): Promise<boolean> {
  const mine = talk;
  if (!mine || bringing.value?.stage !== 'looked') return false;
  // Request a stop instead of ending the worker: only the merge knows whether it was already
  // complete.
  const stop = () => mine.stop();
  bringing.value = { stage: 'bringing', done: 0, stop };
  try {
    const answer = await mine.ask({ kind: 'bring' }, (done) => {
      if (talk === mine) bringing.value = { stage: 'bringing', done, stop };
    });
    if (answer.kind !== 'bring') return false;
    bringing.value = null;
    talk = null;
    if (answer.result.ok) {
      merged?.end();
      merged = mine;
      tell(sayBook.brought(touched(answer.result.value)), () => takeBack(mine));
      return true;
    }
    mine.end();
    const { fault } = answer.result;
    if (fault.code === 'stopped') tell(sayBook.broughtStopped);
    else complain(bookFaultWords(fault));
  } catch (error) {
    bringing.value = null;
    if (!isAbort(error)) complain(bookFaultWords({ code: 'not-written', detail: String(error) }));
  }
  return false;
}

async function takeBack(from: Talk): Promise<Result<null, BookFault>> {
  try {
    const answer = await from.ask({ kind: 'take back' });
    from.end();
    return answer.kind === 'take back' ? answer.result : fail({ code: 'not-found' });
  } catch {
    return fail({ code: 'not-found' });
  }
}

/** Discards the previewed copy. Does nothing during a merge. */
export function dropCopy(): void {
  if (bringing.value?.stage === 'bringing') return;
  talk?.end();
  talk = null;
  bringing.value = null;
}
