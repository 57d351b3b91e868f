import { beforeEach, expect, test } from 'vitest';
import { type Book, openBook } from '../../../src/book/store/open-book.ts';
import { failAtCommit } from '../disk.ts';
import { freshDisk, harmonyBodyOf, must, openMade } from '../made.ts';
import { CLOSED, Notes } from '../notes.ts';

let box: Notes;
let book: Book;
beforeEach(async () => {
  freshDisk();
  box = new Notes();
  book = await openMade({ syncStorage: box });
});
const names = async (of: Book) => must(await of.list()).map(({ name }) => name);
const put = (name: string) => book.put({ kind: 'harmony', body: harmonyBodyOf(name) });
const keep = async (name: string) => must(await put(name)).entry;
/** Like a page that closes: the notes are written, and no transaction comes to its end. */
async function close(change: () => unknown): Promise<void> {
  const mend = failAtCommit(() => new DOMException('', 'AbortError'));
  const writing = [change(), book.flush()];
  book.journalPendingWrites();
  await Promise.all(writing);
  mend();
}

test('what was typed when the page closed is there at the next start', async () => {
  const entry = await keep('Jay');
  await close(() =>
    book.saveSoon({
      kind: 'harmony',
      id: entry.id,
      over: entry,
      body: harmonyBodyOf('Jay, again'),
    }),
  );
  expect(await names(book)).toEqual(['Jay']);
  const next = await openMade({ syncStorage: box });
  expect(await names(next)).toEqual(['Jay, again']);
  expect(box.slips).toBe(0);
  expect(next.saving.now).toEqual({ state: 'saved' });
  // Once only: a later start changes nothing.
  const { clock } = must(await next.get('harmony', entry.id));
  expect(must(await (await openMade({ syncStorage: box })).get('harmony', entry.id)).clock).toBe(
    clock,
  );
});

test('a new entry too; and nothing is noted of what is on disk', async () => {
  await keep('Jay');
  book.journalPendingWrites();
  expect(box.slips).toBe(0);
  await close(() => put('Magpie'));
  expect(box.slips).toBe(1);
  expect((await names(await openMade({ syncStorage: box }))).sort()).toEqual(['Jay', 'Magpie']);
});

test('a slip that stayed behind makes its change once more, which is none', async () => {
  const entry = await keep('Jay');
  await close(() =>
    book.put({ kind: 'harmony', over: entry, body: { ...entry.body, name: 'Jay, again' } }),
  );
  const left = new Notes(box);
  await openMade({ syncStorage: box });
  const again = await openMade({ syncStorage: left });
  expect(await names(again)).toEqual(['Jay, again']);
  expect(left.slips).toBe(0);
});

test('what another window changed meanwhile is not lost', async () => {
  const entry = await keep('Jay');
  await close(() =>
    book.put({ kind: 'harmony', over: entry, body: { ...entry.body, name: 'As typed' } }),
  );
  const other = await openMade({ syncStorage: null });
  const body = { ...entry.body, name: 'As the other has it', note: 'Theirs' };
  must(await other.put({ kind: 'harmony', over: entry, body }));
  const next = await openMade({ syncStorage: box });
  expect((await names(next)).sort()).toEqual(['As the other has it', 'As typed']);
  expect(must(await next.get('harmony', entry.id)).body.note).toBe('Theirs');
});

test('a disk that is full at the next start too: the slip waits for another day', async () => {
  const entry = await keep('Jay');
  await close(() =>
    book.put({ kind: 'harmony', over: entry, body: { ...entry.body, name: 'Jay, again' } }),
  );
  const mend = failAtCommit(() => new DOMException('', 'QuotaExceededError'));
  expect(await names(await openMade({ syncStorage: box }))).toEqual(['Jay']);
  expect(box.slips).toBe(1);
  mend();
  expect(await names(await openMade({ syncStorage: box }))).toEqual(['Jay, again']);
  expect(box.slips).toBe(0);
});

test('saved at a second try, it is noted no more, and what was thrown away since stays away', async () => {
  const entry = await keep('Jay');
  const mend = failAtCommit(() => new DOMException('', 'QuotaExceededError'));
  const body = { ...entry.body, name: 'Jay, again' };
  expect((await book.put({ kind: 'harmony', over: entry, body })).ok).toBe(false);
  book.journalPendingWrites();
  expect(box.slips).toBe(1);
  mend();
  await book.retry();
  expect(await names(book)).toEqual(['Jay, again']);
  expect(box.slips).toBe(0);
  must(await book.remove(entry.id));
  book.journalPendingWrites();
  expect(await names(await openMade({ syncStorage: box }))).toEqual([]);
});

test('what could not be saved does not come back once the entry was thrown away', async () => {
  const entry = await keep('Jay');
  const mend = failAtCommit(() => new DOMException('', 'QuotaExceededError'));
  const body = { ...entry.body, name: 'Jay, again' };
  await book.put({ kind: 'harmony', over: entry, body });
  book.journalPendingWrites();
  mend();
  must(await book.remove(entry.id));
  book.journalPendingWrites();
  expect(await names(await openMade({ syncStorage: box }))).toEqual([]);
});

test('what the painter gave up is given up', async () => {
  await close(() => put('Jay'));
  expect(box.slips).toBe(1);
  book.saving.forget();
  expect(await names(await openMade({ syncStorage: box }))).toEqual([]);
});

test('a slip that nothing can be made of goes; strangers’ notes stay', async () => {
  box.set('studio-book slip harmony-0001', '{"id":"harmony-0001","kind":"harmony","body":{"a":1}}');
  box.set('studio-book slip harmony-0002', 'half a te');
  box.set('theirs', 'stays');
  const next = await openMade({ syncStorage: box });
  expect(await names(next)).toEqual([]);
  expect(next.saving.now).toEqual({ state: 'saved' });
  expect(box.has('studio-book slip harmony-0001')).toBe(false);
  expect(box.get('theirs')).toBe('stays');
});

test('a browser that keeps no notes loses nothing else', async () => {
  const opened = must(await openBook({ syncStorage: CLOSED, channel: null }));
  must(await opened.put({ kind: 'harmony', body: harmonyBodyOf('Jay') }));
  opened.journalPendingWrites();
  expect(await names(opened)).toEqual(['Jay']);
});
