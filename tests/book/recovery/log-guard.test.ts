import '../disk.ts';
import { afterEach, expect, test } from 'vitest';
import { guardConnection, usesDatabaseLog } from '../../../src/book/recovery/log-guard.ts';
import { connect, MIGRATION_STEPS } from '../../../src/book/store/database.ts';
import type { Locks } from '../../../src/book/store/unused-maps.ts';

let books = 0;
const opened: { close(): void }[] = [];
afterEach(() => {
  for (const one of opened.splice(0)) one.close();
});

/** A book, and what is in its table of marks. */
async function book(name = `torn ${++books}`) {
  const plain = await connect(name, MIGRATION_STEPS, () => {});
  opened.push(plain);
  /** Most of it that was ever there at once. */
  let most = 0;
  const watched: typeof plain = {
    ...plain,
    async run(mode, tables, work) {
      const value = await plain.run(mode, tables, work);
      most = Math.max(most, await weight());
      return value;
    },
  };
  const rows = () =>
    plain.run('readonly', ['meta'], async (transaction) => {
      const meta = transaction.objectStore('meta');
      return { keys: await meta.getAllKeys(), values: await meta.getAll() };
    });
  const weight = async () => (await rows()).values.join('').length;
  const write = (connection: typeof plain, key: string) =>
    connection.run('readwrite', ['meta'], (transaction) =>
      transaction.objectStore('meta').put('', key),
    );
  return { name, watched, keys: async () => (await rows()).keys, most: () => most, write };
}

/** Locks of a browser in which these are held by other pages. */
const locksHeld = (...names: readonly string[]): Locks => ({
  request: (_name, _options, work) => work({}),
  query: async () => ({ held: names.map((name) => ({ name })) }),
});

test('a page is marked from before its first write until it is put away', async () => {
  const { name, watched, keys, most, write } = await book();
  const guarded = await guardConnection(watched, name, 'one', locksHeld());
  expect(await keys()).toEqual([]);
  await write(guarded, 'a');
  expect(await keys()).toEqual(['a', 'at work one']);
  await guarded.clearLogMark();
  expect(await keys()).toEqual(['a']);
  await write(guarded, 'b');
  expect(await keys()).toEqual(['a', 'at work one', 'b']);
  expect(most()).toBe(0);
});

test('the mark stays until a write that is on its way has come to its end', async () => {
  const { name, watched, keys } = await book();
  const guarded = await guardConnection(watched, name, 'one', locksHeld());
  // A photograph, while the mark lies in another table and could be taken away beside it.
  const file = { id: 'jay', type: 'image/jpeg', bytes: new ArrayBuffer(8) };
  let isWritten = false;
  const writing = guarded
    .run('readwrite', ['files'], async (transaction) => {
      const files = transaction.objectStore('files');
      for (let i = 0; i < 20; i++) await files.put(file);
    })
    .then(async () => {
      isWritten = true;
      expect(await keys()).toEqual(['at work one']);
    });
  await guarded.clearLogMark();
  expect(isWritten).toBe(true);
  await writing;
  expect(await keys()).toEqual([]);
});

test('what was left behind is made good once, with more than a log of Chromium holds', async () => {
  const { name, watched, keys, most, write } = await book();
  await write(await guardConnection(watched, name, 'one', locksHeld()), 'a');
  const second = await guardConnection(watched, name, 'two', locksHeld());
  expect(most()).toBeGreaterThan(4 * 2 ** 20);
  expect(await keys()).toEqual(['a']);
  await write(second, 'b');
  await second.clearLogMark();
  const before = most();
  await guardConnection(watched, name, 'three', undefined);
  expect(most()).toBe(before);
  expect(await keys()).toEqual(['a', 'b']);
});

test('another page that is alive is left alone', async () => {
  const { name, watched, keys, most, write } = await book();
  await write(await guardConnection(watched, name, 'one', locksHeld()), 'a');
  await guardConnection(watched, name, 'two', locksHeld(`${name} at work one`));
  expect(most()).toBe(0);
  expect(await keys()).toEqual(['a', 'at work one']);
});

test('a browser that does not tell of its locks opens the book all the same', async () => {
  const { name, watched, keys, write } = await book();
  await write(await guardConnection(watched, name, 'one', locksHeld()), 'a');
  const query = () => Promise.reject(new DOMException('not here', 'SecurityError'));
  await guardConnection(watched, name, 'two', { ...locksHeld(), query });
  expect(await keys()).toEqual(['a']);
});

test('only Chromium keeps such a log', () => {
  const brands = [{ brand: 'Not.A/Brand' }, { brand: 'Chromium' }];
  expect(usesDatabaseLog({ userAgentData: { brands } })).toBe(true);
  expect(usesDatabaseLog({ userAgentData: { brands: [] } })).toBe(false);
  expect(usesDatabaseLog({})).toBe(false);
});
