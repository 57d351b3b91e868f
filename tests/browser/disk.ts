import type { Page } from 'playwright-core';
import type { Entry } from '../../src/book/schema/record.ts';

/**
 * Runs in a page of the app: what a table of the book holds as it is on disk, all of it, its keys, or what stands
 * under a key; null for a key that is not there.
 */
export async function onDisk({
  table,
  key,
  onlyKeys = false,
}: {
  table: string;
  key?: string;
  onlyKeys?: boolean;
}): Promise<unknown> {
  const answered = <T>(asked: IDBRequest<T>): Promise<T> =>
    new Promise((done, failed) => {
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => failed(asked.error);
    });
  const book = await answered(indexedDB.open('studio-book'));
  try {
    const store = book.transaction(table).objectStore(table);
    if (onlyKeys) return await answered(store.getAllKeys());
    return key === undefined
      ? await answered(store.getAll())
      : ((await answered(store.get(key))) ?? null);
  } finally {
    book.close();
  }
}

/** Every entry of the book as it is on disk. */
export const entriesOnDisk = (page: Page): Promise<Entry[]> =>
  page.evaluate(onDisk, { table: 'records' }) as Promise<Entry[]>;
