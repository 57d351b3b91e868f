import { beforeEach, expect, test } from 'vitest';
import type { BookFault } from '../../../src/book/schema/book-fault.ts';
import type { Book } from '../../../src/book/store/open-book.ts';
import { freshDisk, harmonyBodyOf, must, openMade } from '../made.ts';
import { CLOSED, Notes } from '../notes.ts';

let box: Notes;
beforeEach(() => {
  freshDisk();
  box = new Notes();
});
/** A book, and whether the loss of the one before was told when it was opened. */
async function open(at: Notes | typeof CLOSED | null = box) {
  let isLost = false;
  const notice = ({ code }: BookFault) => {
    isLost ||= code === 'book-lost';
  };
  return { ...(await openMade({ syncStorage: at, notice })), isLost };
}
const save = async (into: Pick<Book, 'put'>) =>
  must(await into.put({ kind: 'harmony', body: harmonyBodyOf('Jay') }));

test('a book that the browser threw away is told of, once', async () => {
  const book = await open();
  expect(book.isLost).toBe(false);
  await save(book);
  expect((await open()).isLost).toBe(false);
  freshDisk();
  const empty = await open();
  expect(empty.isLost).toBe(true);
  expect(must(await empty.list())).toEqual([]);
  expect((await open()).isLost).toBe(false);
  freshDisk();
  expect((await open()).isLost).toBe(false);
});

test('what was saved after a loss can be lost again', async () => {
  await save(await open());
  freshDisk();
  await save(await open());
  freshDisk();
  expect((await open()).isLost).toBe(true);
});

test('an empty book is no loss, nor is one of which nothing could be noted', async () => {
  await open();
  freshDisk();
  expect((await open()).isLost).toBe(false);
  await save(await open(CLOSED));
  freshDisk();
  expect((await open(CLOSED)).isLost).toBe(false);
  expect((await open(null)).isLost).toBe(false);
});
