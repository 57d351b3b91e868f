import {
  type DBSchema,
  type IDBPDatabase,
  type IDBPTransaction,
  openDB,
  type StoreNames,
} from 'idb';
import { type BookFault, isDead } from '../schema/book-fault.ts';
import type { EntrySummary } from '../schema/entry-summary.ts';
import type { AnyRecord } from '../schema/record.ts';

/**
 * Bytes with their media type, named by their SHA-256. Never a Blob, because WebKit fails to keep
 * Blobs in IndexedDB.
 */
export interface StoredFile {
  readonly id: string;
  /** Media type. */
  readonly type: string;
  readonly bytes: ArrayBuffer;
}

interface Tables extends DBSchema {
  records: { key: string; value: AnyRecord };
  /** One summary for each entry that has contents, written in the same transaction. */
  cards: {
    key: string;
    value: EntrySummary;
    indexes: { kind: string; files: string; deletedAt: string };
  };
  /** Photographs, masks and label maps. A table of their own, so that no list loads them. */
  files: { key: string; value: StoredFile };
  /** Keyed by the file id of the photograph. */
  thumbnails: { key: string; value: StoredFile };
  /** The device's id, its latest clock, the time of the last copy, and state that screens save. */
  meta: { key: string; value: string };
}
export type TableName = StoreNames<Tables>;
type Database = IDBPDatabase<Tables>;
export type Transaction<Mode extends IDBTransactionMode> = IDBPTransaction<
  Tables,
  TableName[],
  Mode
>;
type Upgrade = IDBPTransaction<Tables, TableName[], 'versionchange'>;
export type MigrationStep = (database: Database, upgrade: Upgrade) => void | Promise<void>;

/** Step n migrates a book from version n to n + 1. Never edit a step that has shipped. */
export const MIGRATION_STEPS: readonly MigrationStep[] = [
  (database) => {
    database.createObjectStore('records', { keyPath: 'id' });
    const cards = database.createObjectStore('cards', { keyPath: 'id' });
    cards.createIndex('kind', 'kind');
    cards.createIndex('deletedAt', 'deletedAt');
    cards.createIndex('files', 'files', { multiEntry: true });
    database.createObjectStore('files', { keyPath: 'id' });
    database.createObjectStore('thumbnails', { keyPath: 'id' });
    database.createObjectStore('meta');
  },
];

/**
 * For migration steps: copies every row of a table into a new one, verifies the copies, and only
 * then drops the old table.
 * @param convert the new form of one row; an exception rolls back the whole migration
 * @param sound   validates a converted row
 * @throws Error when a row is missing or fails `sound`; the transaction must then be aborted
 */
export async function moveTable(
  database: Database,
  upgrade: Upgrade,
  from: string,
  to: string,
  convert: (row: unknown) => unknown,
  sound: (row: unknown) => boolean,
): Promise<void> {
  // Today's types do not include tables of other versions.
  const [stores, tables] = [database as unknown as IDBPDatabase, upgrade as unknown as Untyped];
  const source = tables.objectStore(from);
  const target = stores.createObjectStore(to, { keyPath: source.keyPath });
  for (let cursor = await source.openCursor(); cursor; cursor = await cursor.continue())
    await target.put(convert(cursor.value));
  const copies = await target.getAll();
  if (copies.length !== (await source.count()) || !copies.every(sound))
    throw new Error(`the copy of ${from} is not sound`);
  stores.deleteObjectStore(from);
}
type Untyped = IDBPTransaction<unknown, string[], 'versionchange'>;

/** Carries a fault out of a transaction and so rolls it back. */
export class BookFaultError extends Error {
  readonly fault: BookFault;
  constructor(fault: BookFault) {
    super(fault.code);
    this.fault = fault;
  }
}

export interface Connection {
  readonly readOnly: BookFault | null;
  /**
   * Runs one transaction: all of it is on disk when the promise resolves, none of it when the
   * promise rejects. `work` may await only calls of the store, otherwise the transaction commits
   * early. After a dropped connection the database is opened again and `work` runs once more, so it
   * must be repeatable.
   * @throws Refusal when `work` refuses, or the book is read-only or closed for good; otherwise the
   *   browser's error
   */
  run<T, Mode extends 'readonly' | 'readwrite'>(
    mode: Mode,
    tables: readonly TableName[],
    work: (transaction: Transaction<Mode>) => Promise<T>,
  ): Promise<T>;
  close(): void;
}

/**
 * Opens the database and migrates it. All steps run in one transaction, so that a failing step
 * leaves the older book unchanged. A book of a newer version is opened read-only.
 * @param notice called with faults that arise outside a call, such as an upgrade in another window
 * @param begun  called when a database was created: at the first opening, or at a later one that
 *   finds it missing
 * @throws the browser's error when the database cannot be opened
 */
export async function connect(
  name: string,
  steps: readonly MigrationStep[],
  notice: (fault: BookFault) => void,
  begun: () => void = () => {},
): Promise<Connection> {
  let readOnly: BookFault | null = null;
  let ended: BookFault | null = null;
  let database: Promise<Database> | null = null;

  const open = (): Promise<Database> => {
    if (ended) return Promise.reject(new BookFaultError(ended));
    if (database) return database;
    let isNew = false;
    const opening: Promise<Database> = openDB<Tables>(name, readOnly ? undefined : steps.length, {
      upgrade(fresh, from, _to, upgrade) {
        isNew = from === 0;
        void migrate(steps.slice(from), fresh, upgrade);
      },
      blocked: () => notice({ code: 'older-window' }),
      // Another window wants to upgrade the book: close this connection, or that window waits for
      // ever.
      blocking(_from, to, event) {
        (event.target as IDBDatabase).close();
        const why: BookFault = { code: to === null ? 'book-removed' : 'newer-window' };
        ended = why;
        notice(why);
      },
      terminated() {
        if (database === opening) database = null;
      },
    });
    database = opening;
    opening.then(
      () => {
        if (isNew) begun();
      },
      () => {
        if (database === opening) database = null;
      },
    );
    return opening;
  };

  try {
    await open();
  } catch (error) {
    if (!(error instanceof Error || error instanceof DOMException) || error.name !== 'VersionError')
      throw error;
    readOnly = { code: 'newer-book' };
    await open();
  }

  return {
    get readOnly() {
      return readOnly;
    },
    async run(mode, tables, work) {
      if (mode === 'readwrite' && readOnly) throw new BookFaultError(readOnly);
      const used = await open();
      try {
        return await once(used, mode, tables, work);
      } catch (error) {
        if (!isDead(error) || ended) throw ended ? new BookFaultError(ended) : error;
        database = null;
        used.close();
        return await once(await open(), mode, tables, work);
      }
    },
    close() {
      void database?.then(
        (open) => open.close(),
        () => {},
      );
      database = null;
    },
  };
}

/**
 * Runs the migration steps; a step that fails aborts the transaction and so undoes all of them.
 * Opening the database reports the failure, so the rejection of `upgrade.done` is ignored here.
 */
async function migrate(steps: readonly MigrationStep[], fresh: Database, upgrade: Upgrade) {
  upgrade.done.catch(() => {});
  try {
    for (const step of steps) await step(fresh, upgrade);
  } catch {
    upgrade.abort();
  }
}

async function once<T, Mode extends 'readonly' | 'readwrite'>(
  database: Database,
  mode: Mode,
  tables: readonly TableName[],
  work: (transaction: Transaction<Mode>) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction([...tables], mode, { durability: 'strict' });
  // On a full disk every put succeeds and the transaction aborts afterwards: only its end counts.
  const end = transaction.done.then(
    () => null,
    (error: unknown) => error ?? new DOMException('the transaction was undone', 'AbortError'),
  );
  let value: T;
  try {
    value = await work(transaction);
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // The transaction has already ended.
    }
    const cause = await end;
    throw error instanceof DOMException && error.name === 'AbortError' ? (cause ?? error) : error;
  }
  const error = await end;
  if (error) throw error;
  return value;
}
