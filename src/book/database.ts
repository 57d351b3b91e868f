import {
  type DBSchema,
  type IDBPDatabase,
  type IDBPTransaction,
  openDB,
  type StoreNames,
} from 'idb';
import type { Card } from './card.ts';
import { type BookFault, isDead } from './faults.ts';
import type { AnyRecord } from './record.ts';

/** Bytes with their type, named by their SHA-256: never a Blob, which WebKit fails to keep. */
export interface StoredFile {
  readonly id: string;
  /** Media type. */
  readonly type: string;
  readonly bytes: ArrayBuffer;
}

export interface Tables extends DBSchema {
  records: { key: string; value: AnyRecord };
  /** One for each entry that has contents, written together with it. */
  cards: { key: string; value: Card; indexes: { kind: string; files: string; deletedAt: string } };
  /** Photographs, masks and label maps: apart, so that no list ever loads them. */
  files: { key: string; value: StoredFile };
  /** By the photograph's own name. */
  thumbnails: { key: string; value: StoredFile };
  /** This device's name, its latest clock, when the last copy was made, what a screen asked to remember. */
  meta: { key: string; value: string };
}
export type Table = StoreNames<Tables>;
export type Database = IDBPDatabase<Tables>;
export type Transaction<Mode extends IDBTransactionMode> = IDBPTransaction<Tables, Table[], Mode>;
type Upgrade = IDBPTransaction<Tables, Table[], 'versionchange'>;
export type MigrationStep = (database: Database, upgrade: Upgrade) => void | Promise<void>;

/** Step n takes a book from version n to n + 1. A step that has shipped is never edited. */
export const STEPS: readonly MigrationStep[] = [
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
 * For steps: copies every row of a table into a new one, verifies the copies, and only then drops the old.
 * @param convert one row's new form; throws where it cannot, which undoes the whole migration
 * @param sound   what the new form must satisfy
 */
export async function moveTable(
  database: Database,
  upgrade: Upgrade,
  from: string,
  to: string,
  convert: (row: unknown) => unknown,
  sound: (row: unknown) => boolean,
): Promise<void> {
  // Tables of other versions are not in today's types.
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

/** Carries a fault out of a transaction, which is then undone. */
export class Refusal extends Error {
  readonly fault: BookFault;
  constructor(fault: BookFault) {
    super(fault.code);
    this.fault = fault;
  }
}

export interface Connection {
  readonly readOnly: BookFault | null;
  /**
   * One transaction: all of it is on disk when the promise resolves, none of it when it rejects.
   * `work` may await only the store's own calls, or the transaction ends under it. A dropped
   * connection is opened again and the work tried once more, so it must be repeatable.
   */
  run<T, Mode extends 'readonly' | 'readwrite'>(
    mode: Mode,
    tables: readonly Table[],
    work: (transaction: Transaction<Mode>) => Promise<T>,
  ): Promise<T>;
  close(): void;
}

/**
 * Opens the database, bringing it up to date step by step: in one transaction, so that a step that
 * fails leaves the older book whole. One written by a newer program is opened for reading.
 * @param begun called where there was no book of this name, at first or when it is opened again
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
    if (ended) return Promise.reject(new Refusal(ended));
    if (database) return database;
    let isNew = false;
    const opening: Promise<Database> = openDB<Tables>(name, readOnly ? undefined : steps.length, {
      upgrade(fresh, from, _to, upgrade) {
        isNew = from === 0;
        void migrate(steps.slice(from), fresh, upgrade);
      },
      blocked: () => notice({ code: 'older-window' }),
      // Another window wants a newer book: let go of this one, or that window waits for ever.
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
      if (mode === 'readwrite' && readOnly) throw new Refusal(readOnly);
      const used = await open();
      try {
        return await once(used, mode, tables, work);
      } catch (error) {
        if (!isDead(error) || ended) throw ended ? new Refusal(ended) : error;
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

/** A step that fails undoes all of them: nobody but the transaction hears of its rejection. */
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
  tables: readonly Table[],
  work: (transaction: Transaction<Mode>) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction([...tables], mode, { durability: 'strict' });
  // On a full disk every put succeeds and then the transaction aborts: only its end counts.
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
      // It has ended already, which is what was wanted.
    }
    const cause = await end;
    throw error instanceof DOMException && error.name === 'AbortError' ? (cause ?? error) : error;
  }
  const error = await end;
  if (error) throw error;
  return value;
}
