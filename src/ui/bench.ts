import { onHide } from '../book/drafts.ts';
import { ownBox, using } from '../book/slips.ts';

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
    if (lies === null) clearBench(name);
    else if (lies !== undefined)
      // A browser that keeps nothing: the book has said so.
      using(box, (open) => open.setItem(keyOf(name), JSON.stringify(lies)), undefined);
  });
}

/** What lay there when the page was hidden last, as it was written; null for nothing. */
export function benchOf(name: string): string | null {
  return using(box, (open) => open.getItem(keyOf(name)), null);
}

export function clearBench(name: string): void {
  using(box, (open) => open.removeItem(keyOf(name)), undefined);
}
