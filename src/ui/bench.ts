import { onHide } from '../book/drafts.ts';
import { ownBox } from '../book/slips.ts';

const box = ownBox();
const keyOf = (name: string): string => `bench ${name}`;

/**
 * What lies on a bench and is not in the book yet outlives the page: it is noted when the page hides,
 * at once, for a page that is being closed has no time for more.
 * @param now what lies there; null for nothing, undefined to leave alone what was noted before
 */
export function keepBench(name: string, now: () => unknown): void {
  onHide(window, () => {
    const lies = now();
    try {
      if (lies === null) clearBench(name);
      else if (lies !== undefined) box?.setItem(keyOf(name), JSON.stringify(lies));
    } catch {
      // A browser that keeps nothing: the book has said so.
    }
  });
}

/** What lay there when the page was hidden last, as it was written; null for nothing. */
export function benchOf(name: string): string | null {
  try {
    return box?.getItem(keyOf(name)) ?? null;
  } catch {
    return null;
  }
}

export function clearBench(name: string): void {
  try {
    box?.removeItem(keyOf(name));
  } catch {
    // Nothing lies there then.
  }
}
