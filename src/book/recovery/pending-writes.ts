import type { Kind } from '../schema/record.ts';
import type { EntryDraft } from '../store/writer.ts';

/**
 * The part of `localStorage` that the book uses. Its writes are synchronous, so they succeed even
 * while the page closes.
 */
export interface SyncStorage {
  readonly length: number;
  key(index: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** One pending change, complete enough to be repeated. */
type PendingWrite = Pick<EntryDraft<Kind>, 'kind' | 'body' | 'over' | 'quiet'> & {
  readonly id: string;
};

/**
 * Journal of pending writes in localStorage. A transaction needs several turns of the event loop,
 * and a closing page has none left; localStorage is synchronous. The next start of Kingcup finds
 * the journal and repeats its changes. Repeating a change that did reach the disk has no effect, so
 * a stale record is harmless.
 */
export interface WriteJournal {
  /**
   * Records a change as pending.
   * @returns call it when the change is on disk
   */
  begin(slip: PendingWrite): () => void;
  /**
   * For a change without a record of its own.
   * @returns call it when that change is on disk: it removes the pending record under this id
   *   unless a newer one has replaced it
   */
  waiting(id: string): () => void;
  /** Writes all pending changes to localStorage, synchronously. */
  write(): void;
  /** Changes that an earlier page did not complete. */
  left(): readonly PendingWrite[];
  /** Discards the pending change of one entry, or all pending changes. */
  drop(id?: string): void;
}

/**
 * @param book name of the book; part of the localStorage keys
 * @param box  null keeps nothing
 */
export function createWriteJournal(book: string, box: SyncStorage | null): WriteJournal {
  const under = new Map<string, PendingWrite>();
  const prefix = `${book} slip `;
  const attempt = <T>(what: (box: SyncStorage) => T, otherwise: T): T =>
    withSyncStorage(box, what, otherwise);
  const tear = (id: string) => attempt((box) => box.removeItem(prefix + id), undefined);
  const waiting = (id: string) => {
    const slip = under.get(id);
    return () => {
      // A newer change of this entry is still pending.
      if (under.get(id) !== slip) return;
      under.delete(id);
      tear(id);
    };
  };

  return {
    begin(slip) {
      under.set(slip.id, slip);
      return waiting(slip.id);
    },
    waiting,
    write() {
      for (const [id, slip] of under)
        attempt((box) => box.setItem(prefix + id, JSON.stringify(slip)), undefined);
    },
    left: () =>
      attempt((box) => {
        const keys = Array.from({ length: box.length }, (_, i) => box.key(i) ?? '');
        return keys
          .filter((key) => key.startsWith(prefix))
          .flatMap((key) => {
            const slip = read(box.getItem(key));
            return slip && prefix + slip.id === key ? [slip] : [];
          });
      }, []),
    drop(id) {
      for (const one of id === undefined ? [...under.keys()] : [id]) {
        under.delete(one);
        tear(one);
      }
    },
  };
}

/** Checks only the outline; the book validates the contents when it writes them. */
function read(text: string | null): PendingWrite | null {
  try {
    const slip = JSON.parse(text ?? 'null');
    const isSlip = typeof slip?.id === 'string' && typeof slip.kind === 'string' && slip.body;
    return isSlip ? slip : null;
  } catch {
    return null;
  }
}

/** Calls `what` with the storage. Returns `otherwise` when there is no storage or it throws. */
export function withSyncStorage<T>(
  box: SyncStorage | null,
  what: (box: SyncStorage) => T,
  otherwise: T,
): T {
  try {
    return box ? what(box) : otherwise;
  } catch {
    // Private windows of some browsers refuse all access; a full storage refuses writes.
    return otherwise;
  }
}

/** The page's `localStorage`; null when access is forbidden, and in a worker. */
export function pageStorage(): SyncStorage | null {
  try {
    return (globalThis as { localStorage?: SyncStorage }).localStorage ?? null;
  } catch {
    return null;
  }
}
