import { TYPE_OF } from '../transfer/copy-format.ts';
import type { BookGateway } from './gateway.ts';

/** The part of `navigator.locks` that the book uses. */
export interface Locks {
  request<T>(
    name: string,
    options: { readonly ifAvailable?: boolean; readonly mode?: 'shared' | 'exclusive' },
    work: (lock: unknown) => Promise<T>,
  ): Promise<T>;
  query?(): Promise<{ readonly held?: readonly { readonly name?: string }[] }>;
}

/**
 * Deletes maps that no entry needs any more: replaced label maps and masks. It does so only while
 * no other window has the book open, because that window's undo may need them. Without lock support
 * in the browser nothing is deleted.
 *
 * @returns releases this window's lock on the book
 */
export function sweepUnusedMaps(
  name: string,
  ledger: BookGateway,
  locks: Locks | undefined,
): () => void {
  let release = () => {};
  if (!locks) return release;
  const open = new Promise<void>((resolve) => {
    release = resolve;
  });
  const claim = `${name} open`;
  const sweepAlone = locks.request(claim, { ifAvailable: true }, async (lock) => {
    if (lock) await sweep(ledger);
  });
  void sweepAlone
    .then(() => locks.request(claim, { mode: 'shared' }, () => open))
    .catch(() => {
      // Without the lock the next window deletes nothing, which does no harm.
    });
  return () => release();
}

/**
 * Deletes maps only, because they can be gathered again. A photograph is deleted when its entry
 * leaves the bin, never here.
 */
const sweep = (ledger: BookGateway) =>
  ledger.write(null, ['cards', 'files'], async (transaction) => {
    const needed = transaction.objectStore('cards').index('files');
    const files = transaction.objectStore('files');
    for (const id of await files.getAllKeys()) {
      if ((await needed.count(id)) > 0) continue;
      const file = await files.get(id);
      if (file?.type === TYPE_OF.map) await files.delete(id);
    }
    return { value: null, ids: [] };
  });
