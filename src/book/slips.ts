import type { Kind } from './record.ts';
import type { Draft } from './write.ts';

/** What of `localStorage` the book uses: it keeps a text at once, even while the page is being closed. */
export interface SlipBox {
  readonly length: number;
  key(index: number): string | null;
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** A change on its way into the book, whole enough to be made once more. */
export type Slip = Pick<Draft<Kind>, 'kind' | 'body' | 'over' | 'quiet'> & { readonly id: string };

/**
 * Slips of paper for what is on its way into the book when the page closes. A transaction takes several
 * turns, and a page that is being closed has none left; a slip takes no turn at all. The next start of
 * Kingcup finds it and makes the change. Made twice, it is the same change: a slip that stayed behind
 * by accident does no harm.
 */
export interface Slips {
  /** From now on the change is on its way; the answer is called once it is on disk. */
  begin(slip: Slip): () => void;
  /** What is on its way under this id is settled once the answer is called, unless it was changed again. */
  waiting(id: string): () => void;
  /** Writes a slip for everything on its way, at once. */
  write(): void;
  /** The changes that an earlier page did not bring to an end. */
  left(): readonly Slip[];
  /** The painter gives a change up, or all of them. */
  drop(id?: string): void;
}

export function createSlips(book: string, box: SlipBox | null): Slips {
  const under = new Map<string, Slip>();
  const prefix = `${book} slip `;
  const attempt = <T>(what: (box: SlipBox) => T, otherwise: T): T => using(box, what, otherwise);
  const tear = (id: string) => attempt((box) => box.removeItem(prefix + id), undefined);
  const waiting = (id: string) => {
    const slip = under.get(id);
    return () => {
      // What was changed again meanwhile is still on its way.
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

/** Only its outline: the book checks what it writes. */
function read(text: string | null): Slip | null {
  try {
    const slip = JSON.parse(text ?? 'null');
    const isSlip = typeof slip?.id === 'string' && typeof slip.kind === 'string' && slip.body;
    return isSlip ? slip : null;
  } catch {
    return null;
  }
}

/** What is done with a box; `otherwise` where there is none, or it refuses. */
export function using<T>(box: SlipBox | null, what: (box: SlipBox) => T, otherwise: T): T {
  try {
    return box ? what(box) : otherwise;
  } catch {
    // Private windows of some browsers keep nothing here; a full one keeps no more.
    return otherwise;
  }
}

/** A page's own `localStorage`; null where it may not be touched, and in a worker. */
export function ownBox(): SlipBox | null {
  try {
    return (globalThis as { localStorage?: SlipBox }).localStorage ?? null;
  } catch {
    return null;
  }
}
