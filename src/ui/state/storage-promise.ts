import { signal } from '@preact/signals';
import type { Book } from '../../book/store/open-book.ts';
import { requestPersistence, type StoragePromise } from '../../book/store/persistent-storage.ts';

/** The browser's answer to the request for persistent storage; null before an answer. */
export const storagePromise = signal<StoragePromise | null>(null);
/** The request was made. Some browsers ask the user, who may never answer. */
export const isAsked = signal(false);
/** ISO date and time of the last copy of the whole book; null when there is none. */
export const lastCopyTime = signal<string | null>(null);

const ASKED = 'keeping';
const ANSWERS: readonly StoragePromise[] = ['kept', 'may be cleared', 'unknown'];

/**
 * Requests persistent storage after the first save, when there is something to lose. A browser that
 * has answered is not asked again, because some ask the user each time. A promise given later is
 * noticed at the next start.
 */
export function watchKeeping(book: Book): void {
  void recall(book);
  if (book.readOnly) return;
  let asked = false;
  const stop = book.onChange(({ from }) => {
    if (asked || from !== 'this window') return;
    asked = true;
    stop();
    void ask(book);
  });
}

async function recall(book: Book): Promise<void> {
  const [last, answer] = await Promise.all([book.recall('copied'), book.recall(ASKED)]);
  if (last.ok) lastCopyTime.value = last.value;
  if (!answer.ok || answer.value === null) return;
  if (await alreadyKept()) storagePromise.value = 'kept';
  else storagePromise.value = ANSWERS.find((one) => one === answer.value) ?? 'unknown';
}

const alreadyKept = async (): Promise<boolean> => {
  try {
    return (await navigator.storage?.persisted?.()) === true;
  } catch {
    return false;
  }
};

async function ask(book: Book): Promise<void> {
  const before = await book.recall(ASKED);
  if (before.ok && before.value !== null) return;
  isAsked.value = true;
  const answer = await requestPersistence(navigator.storage);
  storagePromise.value = answer;
  await book.remember(ASKED, answer);
}
