import { pageStorage, withSyncStorage } from '../../book/recovery/pending-writes.ts';
import { onHide } from '../../book/store/draft-autosave.ts';

const box = pageStorage();
const keyOf = (name: string): string => `bench ${name}`;

/**
 * Saves a screen's draft, which is not in the book yet, in localStorage when the page hides. That
 * storage is synchronous, because a closing page has no time for more.
 * @param now the current draft; null for none, undefined to leave the saved draft unchanged
 */
export function saveDraftOnHide(name: string, now: () => unknown): void {
  onHide(window, () => {
    const lies = now();
    if (lies === null) clearDraft(name);
    else if (lies !== undefined)
      // Without localStorage there is nothing to do: the book has already reported it.
      withSyncStorage(box, (open) => open.setItem(keyOf(name), JSON.stringify(lies)), undefined);
  });
}

/** The saved draft as JSON; null when there is none. */
export function readDraft(name: string): string | null {
  return withSyncStorage(box, (open) => open.getItem(keyOf(name)), null);
}

export function clearDraft(name: string): void {
  withSyncStorage(box, (open) => open.removeItem(keyOf(name)), undefined);
}
