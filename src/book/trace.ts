import type { SlipBox } from './slips.ts';

/**
 * A word outside the book that something is in it. A browser can throw a whole book away and begin an empty
 * one without telling anybody; the word that is still there tells of it.
 */
export interface Trace {
  /** Something is in the book. */
  leave(): void;
  /** Whether something was, as an earlier page said; asked once, and then forgotten. */
  take(): boolean;
}

export function createTrace(book: string, box: SlipBox | null): Trace {
  const key = `${book} is begun`;
  return {
    leave() {
      try {
        box?.setItem(key, '');
      } catch {
        // Where nothing can be kept beside the book, its loss cannot be told.
      }
    },
    take() {
      try {
        const isThere = typeof box?.getItem(key) === 'string';
        if (isThere) box?.removeItem(key);
        return isThere;
      } catch {
        return false;
      }
    },
  };
}
