import { beforeEach, expect, test } from 'vitest';
import { freshDisk, harmonyBodyOf, must, openMade } from './made.ts';
import { CLOSED, Notes } from './notes.ts';

let box: Notes;
beforeEach(() => {
  freshDisk();
  box = new Notes();
});
const save = async (into: Awaited<ReturnType<typeof openMade>>) =>
  must(await into.put({ kind: 'harmony', body: harmonyBodyOf('Jay') }));

test('a book that the browser threw away is told of, once', async () => {
  const book = await openMade({ box });
  expect(book.isLost).toBe(false);
  await save(book);
  expect((await openMade({ box })).isLost).toBe(false);
  freshDisk();
  const empty = await openMade({ box });
  expect(empty.isLost).toBe(true);
  expect(must(await empty.list())).toEqual([]);
  expect((await openMade({ box })).isLost).toBe(false);
  freshDisk();
  expect((await openMade({ box })).isLost).toBe(false);
});

test('what was saved after a loss can be lost again', async () => {
  await save(await openMade({ box }));
  freshDisk();
  await save(await openMade({ box }));
  freshDisk();
  expect((await openMade({ box })).isLost).toBe(true);
});

test('an empty book is no loss, nor is one of which nothing could be noted', async () => {
  await openMade({ box });
  freshDisk();
  expect((await openMade({ box })).isLost).toBe(false);
  await save(await openMade({ box: CLOSED }));
  freshDisk();
  expect((await openMade({ box: CLOSED })).isLost).toBe(false);
  expect((await openMade({ box: null })).isLost).toBe(false);
});
