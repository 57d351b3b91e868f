import { bookFaultWords } from '../../book/faults.ts';
import type { Bodies, Entry, Kind } from '../../book/record.ts';
import type { Put, Undo } from '../../book/store.ts';
import { ok } from '../../result.ts';
import { complain, opening, tell } from '../studio.ts';
import { type Kept, kept } from './days.ts';

let last: Promise<unknown> = Promise.resolve();
/**
 * Runs changes one after another, so that each builds on the saved result of the one before. A
 * rejected change rejects its own promise and does not block the next.
 */
export function inTurn<T>(change: () => Promise<T>): Promise<T> {
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
export async function save<K extends Kind>(
  draft: {
    readonly kind: K;
    readonly body: Bodies[K];
    readonly id?: string;
    readonly over?: Entry<K>;
  },
  said: string | null,
): Promise<Put<K> | null> {
  const into = await opening;
  if (!into) return null;
  const put = await into.put(draft);
  if (!put.ok) {
    complain(bookFaultWords(put.fault));
    return null;
  }
  // Update at once: the next change must build on this one.
  const { entry } = put.value;
  const slot = SLOTS[draft.kind];
  if (slot && kept.value) {
    const rest = kept.value[slot] as readonly { readonly id: string }[];
    const at = rest.findIndex(({ id }) => id === entry.id);
    const next = at < 0 ? [...rest, entry] : rest.with(at, entry);
    kept.value = { ...kept.value, [slot]: next };
  }
  if (said !== null) tell(said, put.value.undo);
  return put.value;
}
const SLOTS: Partial<Record<Kind, keyof Kept>> = {
  palette: 'palettes',
  passage: 'passages',
  leftover: 'leftovers',
  sheet: 'sheets',
};

/** Moves an entry to the bin and drops it from `kept` at once; null after a fault. */
export async function remove(
  kind: 'palette' | 'passage',
  id: string,
): Promise<{ readonly undo: Undo } | null> {
  const removed = await (await opening)?.remove(id);
  if (!removed) return null;
  if (!removed.ok) {
    complain(bookFaultWords(removed.fault));
    return null;
  }
  const slot = SLOTS[kind];
  if (slot && kept.value)
    kept.value = { ...kept.value, [slot]: kept.value[slot].filter((one) => one.id !== id) };
  return removed.value;
}

/** Combines several undos into one that runs the last first and stops at the first fault. */
export const backAll =
  (undos: readonly (Undo | undefined)[]): Undo =>
  async () => {
    for (const undo of undos.toReversed()) {
      const undone = await undo?.();
      if (undone && !undone.ok) return undone;
    }
    return ok(null);
  };
