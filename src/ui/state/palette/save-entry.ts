import type { Bodies, Entry, Kind } from '../../../book/schema/record.ts';
import type { Put, Undo } from '../../../book/store/open-book.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { ok } from '../../../result.ts';
import { bookReady, showError, showNotice } from '../studio.ts';
import { type DayEntries, dayEntries } from './day-entries.ts';

let last: Promise<unknown> = Promise.resolve();
/**
 * Runs changes one after another, so that each builds on the saved result of the one before. A
 * rejected change rejects its own promise and does not block the next.
 */
export function runInSequence<T>(change: () => Promise<T>): Promise<T> {
  const mine = last.then(change);
  last = mine.catch(() => {});
  return mine;
}

/**
 * Saves an entry to the book and to `kept`. Reports a book fault to the painter.
 *
 * @param said success notice, shown with undo; null for none
 * @returns null after a fault, or without an open book
 */
export async function saveDayEntry<K extends Kind>(
  draft: {
    readonly kind: K;
    readonly body: Bodies[K];
    readonly id?: string;
    readonly over?: Entry<K>;
  },
  said: string | null,
): Promise<Put<K> | null> {
  const into = await bookReady;
  if (!into) return null;
  const put = await into.put(draft);
  if (!put.ok) {
    showError(bookFaultWords(put.fault));
    return null;
  }
  // Update at once: the next change must build on this one.
  const { entry } = put.value;
  const slot = ENTRIES_FIELD[draft.kind];
  if (slot && dayEntries.value) {
    const rest = dayEntries.value[slot] as readonly { readonly id: string }[];
    const at = rest.findIndex(({ id }) => id === entry.id);
    const next = at < 0 ? [...rest, entry] : rest.with(at, entry);
    dayEntries.value = { ...dayEntries.value, [slot]: next };
  }
  if (said !== null) showNotice(said, put.value.undo);
  return put.value;
}
const ENTRIES_FIELD: Partial<Record<Kind, keyof DayEntries>> = {
  palette: 'palettes',
  passage: 'passages',
  leftover: 'leftovers',
  sheet: 'sheets',
};

/** Moves an entry to the bin and drops it from `kept` at once; null after a fault. */
export async function removeDayEntry(
  kind: 'palette' | 'passage',
  id: string,
): Promise<{ readonly undo: Undo } | null> {
  const removed = await (await bookReady)?.remove(id);
  if (!removed) return null;
  if (!removed.ok) {
    showError(bookFaultWords(removed.fault));
    return null;
  }
  const slot = ENTRIES_FIELD[kind];
  if (slot && dayEntries.value)
    dayEntries.value = {
      ...dayEntries.value,
      [slot]: dayEntries.value[slot].filter((one) => one.id !== id),
    };
  return removed.value;
}

/** Combines several undos into one that runs the last first and stops at the first fault. */
export const combineUndos =
  (undos: readonly (Undo | undefined)[]): Undo =>
  async () => {
    for (const undo of undos.toReversed()) {
      const undone = await undo?.();
      if (undone && !undone.ok) return undone;
    }
    return ok(null);
  };
