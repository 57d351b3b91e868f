import { type SlipBox, using } from './slips.ts';

/**
 * A word outside the book that something is in it. A browser can throw a whole book away and begin an empty
 * one without telling anybody; the word that is still there tells of it.
 */
export interface Trace {
  /** Something is in the book; written down once. */
  leave(): void;
  /** Whether something was, as an earlier page said; asked once, and then forgotten. */
  take(): boolean;
}

export function createTrace(book: string, box: SlipBox | null): Trace {
  const key = `${book} is begun`;
  let isLeft = false;
  return {
    leave() {
      if (isLeft) return;
      isLeft = true;
      // Where nothing can be kept beside the book, its loss cannot be told.
      using(box, (open) => open.setItem(key, ''), undefined);
    },
    take() {
      isLeft = false;
      const take = (open: SlipBox) => {
        const isThere = open.getItem(key) !== null;
        if (isThere) open.removeItem(key);
        return isThere;
      };
      return using(box, take, false);
    },
  };
}
