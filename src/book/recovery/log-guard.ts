import type { Connection } from '../store/database.ts';
import type { Locks } from '../store/unused-maps.ts';

/**
 * Guards against a truncated log of the browser's database. Chromium stores a book in a log and
 * continues that log at the next start. It reads a log that was cut off during a write, as by a
 * power failure, up to that point. But records appended after the cut make the log unreadable, and
 * at the following start the browser deletes the whole book. A full log is compacted and replaced
 * by a new one. So each page sets a mark while it writes. Where an earlier page's mark is found,
 * the guard first writes enough to fill the log; writes after that are safe.
 */
export interface GuardedConnection extends Connection {
  /** Call when no writes are expected: removes the mark. */
  clearLogMark(): Promise<void>;
}

const MARK = 'at work ';
const BALLAST = 'ballast ';
/**
 * Number and size in bytes of the filler values. Chromium starts a new log at 4 MB, and stores
 * values of more than 64 kB outside it.
 */
const PIECES = 100;
const PIECE = 50_000;

type Browser = { readonly userAgentData?: { readonly brands?: readonly { brand: string }[] } };

/** True when this browser stores databases in such a log. */
export const usesDatabaseLog = (browser = globalThis.navigator as Browser | undefined): boolean =>
  browser?.userAgentData?.brands?.some(({ brand }) => brand === 'Chromium') ?? false;

/**
 * Wraps a connection so that it is marked while it writes. First repairs what an earlier page may
 * have left truncated.
 * @param name of the book
 * @param id   of this page
 */
export async function guardConnection(
  plain: Connection,
  name: string,
  id: string,
  locks: Locks | undefined,
): Promise<GuardedConnection> {
  await fillTruncatedLog(plain, name, locks);
  const key = MARK + id;
  let begun: Promise<void> | null = null;
  let release = () => {};
  const under = new Set<Promise<unknown>>();
  const begin = async () => {
    // The lock shows other pages that this one is alive.
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
      // The next write reports why it failed.
      .catch(() => {});
  };
  const guarded: GuardedConnection = {
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
    async clearLogMark() {
      const before = begun;
      if (!before) return;
      await before;
      // The mark must stay until all writes are complete, in case the device stops during one.
      while (under.size > 0) await Promise.allSettled(under);
      // Another call has removed it meanwhile.
      if (begun !== before) return;
      begun = null;
      await plain
        .run('readwrite', ['meta'], async (transaction) => {
          const gone = transaction.objectStore('meta').delete(key);
          // Commit at once: the page may be about to close.
          transaction.commit();
          await gone;
        })
        .catch(() => {});
      release();
    },
    close() {
      void guarded.clearLogMark().then(() => plain.close());
    },
  };
  return guarded;
}

const lockOf = (name: string, key: string): string => `${name} ${key}`;

/**
 * Fills the log when a page that is no longer alive left its mark. On a full disk the mark stays
 * and the next start tries again.
 */
async function fillTruncatedLog(
  plain: Connection,
  name: string,
  locks: Locks | undefined,
): Promise<void> {
  const keys = await plain.run('readonly', ['meta'], (transaction) =>
    transaction.objectStore('meta').getAllKeys(),
  );
  // Without lock queries a live page counts as dead, which does no harm.
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
    // The marks remain, so the next start tries again.
  }
}
