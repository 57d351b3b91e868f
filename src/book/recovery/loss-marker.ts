import { type SyncStorage, withSyncStorage } from './pending-writes.ts';

/**
 * Marker in localStorage that detects a lost database. A browser can delete a whole book and create
 * an empty one without notice; the marker that remains reveals it.
 */
interface LossMarker {
  /** Sets the marker: the book has contents. */
  leave(): void;
  /** Whether an earlier page set the marker; removes it. */
  take(): boolean;
}

/**
 * @param book name of the book; part of the localStorage key
 */
export function createLossMarker(book: string, box: SyncStorage | null): LossMarker {
  const key = `${book} is begun`;
  let isLeft = false;
  return {
    leave() {
      if (isLeft) return;
      isLeft = true;
      // Without localStorage the loss of a book cannot be detected.
      withSyncStorage(box, (open) => open.setItem(key, ''), undefined);
    },
    take() {
      isLeft = false;
      const take = (open: SyncStorage) => {
        const isThere = open.getItem(key) !== null;
        if (isThere) open.removeItem(key);
        return isThere;
      };
      return withSyncStorage(box, take, false);
    },
  };
}
