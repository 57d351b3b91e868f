import { signal } from '@preact/signals';
import type { Brought, Looked } from '../../../workers/copy.ts';
import type { BookFault } from '../../book/faults.ts';
import { bookFaultWords } from '../../book/faults.ts';
import { fail, type Result } from '../../result.ts';
import { isAbort } from '../jobs.ts';
import { complain, tell } from '../studio.ts';
import { sayBook } from '../words/book.ts';
import { type Talk, talkOfCopies } from './worker.ts';

/** A copy on its way in. */
export type Bringing =
  | { readonly stage: 'looking' | 'bringing'; readonly done: number; readonly stop: () => void }
  | { readonly stage: 'looked'; readonly looked: Looked };
export const bringing = signal<Bringing | null>(null);

/** Holds the copy that was looked at. */
let talk: Talk | null = null;
/** Holds the way back from the last merge. */
let merged: Talk | null = null;

/** How many entries a merge touches. */
export const touched = ({ added, changed, deleted, kept, settled }: Brought): number =>
  added.count + changed.count + deleted.count + kept.count + settled.count;

/** Opens and checks a copy, and shows what it would change; the book is not touched. */
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

/** Merges the copy that was looked at: all of it or nothing. True once it is in the book. */
export async function bringIn(): Promise<boolean> {
  const mine = talk;
  if (!mine || bringing.value?.stage !== 'looked') return false;
  // The merge is asked to stop, not cut off: only it knows whether it had ended already.
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

/** Puts a copy that was looked at aside. */
export function dropCopy(): void {
  if (bringing.value?.stage === 'bringing') return;
  talk?.end();
  talk = null;
  bringing.value = null;
}
