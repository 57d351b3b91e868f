import type { Connection } from './database.ts';
import type { Locks } from './house.ts';

/**
 * Chromium keeps a book in a log that it goes on with at the next start. A log that was torn in the middle of
 * a write, as when a device loses its power, is still read up to there; but what is written after the tear
 * makes it unreadable, and at the start after that the browser throws the whole book away. A log that has
 * grown full is folded up and begun anew. So a page leaves a mark while it writes, and where one was left
 * behind as much is written first as makes the log full: what comes then is safe.
 */
export interface Guarded extends Connection {
  /** Nothing more is to be written for now. */
  putAway(): Promise<void>;
}

const MARK = 'at work ';
const BALLAST = 'ballast ';
/** Chromium begins a new log at 4 MB; values of more than 64 kB lie outside it. */
const PIECES = 100;
const PIECE = 50_000;

type Browser = { readonly userAgentData?: { readonly brands?: readonly { brand: string }[] } };

/** Whether this browser keeps books in such a log. */
export const keepsLog = (browser = globalThis.navigator as Browser | undefined): boolean =>
  browser?.userAgentData?.brands?.some(({ brand }) => brand === 'Chromium') ?? false;

/**
 * The same connection, marked while it writes; what an earlier page left torn is made good before.
 * @param name of the book
 * @param id   of this page
 */
export async function guard(
  plain: Connection,
  name: string,
  id: string,
  locks: Locks | undefined,
): Promise<Guarded> {
  await mend(plain, name, locks);
  const key = MARK + id;
  let begun: Promise<void> | null = null;
  let release = () => {};
  const under = new Set<Promise<unknown>>();
  const begin = async () => {
    // Others see by the lock that this page is alive.
    await new Promise<void>((granted) => {
      if (!locks) return granted();
      const work = () => {
        granted();
        return new Promise<void>((resolve) => {
          release = resolve;
        });
      };
      locks.request(lockOf(name, key), { mode: 'exclusive' }, work).catch(() => granted());
    });
    await plain
      .run('readwrite', ['meta'], (transaction) => transaction.objectStore('meta').put('', key))
      // What is written next tells why it cannot be.
      .catch(() => {});
  };
  const guarded: Guarded = {
    get readOnly() {
      return plain.readOnly;
    },
    async run(mode, tables, work) {
      if (mode !== 'readwrite') return plain.run(mode, tables, work);
      begun ??= begin();
      await begun;
      const writing = plain.run(mode, tables, work);
      under.add(writing);
      try {
        return await writing;
      } finally {
        under.delete(writing);
      }
    },
    async putAway() {
      const before = begun;
      if (!before) return;
      await before;
      // A device that stops in the middle of a write must find the mark.
      while (under.size > 0) await Promise.allSettled(under);
      // Whoever came first has put it away.
      if (begun !== before) return;
      begun = null;
      await plain
        .run('readwrite', ['meta'], async (transaction) => {
          const gone = transaction.objectStore('meta').delete(key);
          // At once: the page may be about to close.
          transaction.commit();
          await gone;
        })
        .catch(() => {});
      release();
    },
    close() {
      void guarded.putAway().then(() => plain.close());
    },
  };
  return guarded;
}

const lockOf = (name: string, key: string): string => `${name} ${key}`;

/** Makes the log full where a page that is no longer alive left its mark; a full disk leaves it for another day. */
async function mend(plain: Connection, name: string, locks: Locks | undefined): Promise<void> {
  const keys = await plain.run('readonly', ['meta'], (transaction) =>
    transaction.objectStore('meta').getAllKeys(),
  );
  // Where that is not told, a page that is alive is taken for one that is not: no harm.
  const told = await locks?.query?.().catch(() => null);
  const alive = new Set(told?.held?.map((lock) => lock.name));
  const left = keys.filter((key) => key.startsWith(MARK) && !alive.has(lockOf(name, key)));
  if (left.length === 0) return;
  const pieces = Array.from({ length: PIECES }, (_, i) => BALLAST + i);
  const piece = 'x'.repeat(PIECE);
  try {
    await plain.run('readwrite', ['meta'], async (transaction) => {
      const meta = transaction.objectStore('meta');
      await Promise.all(pieces.map((key) => meta.put(piece, key)));
    });
    await plain.run('readwrite', ['meta'], async (transaction) => {
      const meta = transaction.objectStore('meta');
      await Promise.all([...pieces, ...left].map((key) => meta.delete(key)));
    });
  } catch {
    // The marks are still there.
  }
}
