import { signal } from '@preact/signals';
import { askToKeep, type Keeping } from '../../book/persist.ts';
import type { Book } from '../../book/store.ts';

/** What the browser answered when it was asked to keep the book; null while it has not been asked. */
export const keeping = signal<Keeping | null>(null);
/** It has been asked; some browsers ask the painter in their turn, and may never answer. */
export const isAsked = signal(false);
/** When the last copy of the whole book was made, ISO; null for never. */
export const copied = signal<string | null>(null);

const ASKED = 'keeping';
const ANSWERS: readonly Keeping[] = ['kept', 'may be cleared', 'unknown'];

/**
 * Asks the browser to keep the book after the first save, when there is something to lose. A browser
 * that has answered is not asked again, for some of them ask the painter; that it has changed its mind
 * is seen at the next start.
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
  if (last.ok) copied.value = last.value;
  if (!answer.ok || answer.value === null) return;
  if (await alreadyKept()) keeping.value = 'kept';
  else keeping.value = ANSWERS.find((one) => one === answer.value) ?? 'unknown';
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
  const answer = await askToKeep(navigator.storage);
  keeping.value = answer;
  await book.remember(ASKED, answer);
}
