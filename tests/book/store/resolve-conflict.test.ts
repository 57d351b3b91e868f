import { beforeEach, describe, expect, test } from 'vitest';
import { mergeBooks } from '../../../src/book/merge/merge-books.ts';
import type { AnyRecord, Entry } from '../../../src/book/schema/record.ts';
import type { Book } from '../../../src/book/store/open-book.ts';
import type { ConflictChoice } from '../../../src/book/store/resolve-conflict.ts';
import { importCopy } from '../../../src/book/transfer/copies.ts';
import { freshDisk, harmonyBodyOf, must, openMade } from '../made.ts';

let book: Book;
let entry: Entry<'harmony'>;
let theirs: Entry<'harmony'>;

const recordsOf = (of: Book): Promise<readonly AnyRecord[]> =>
  of.gateway
    .read(['records'], (transaction) => transaction.objectStore('records').getAll())
    .then(must);
const names = async () =>
  must(await book.list())
    .map(({ name }) => name)
    .sort();
const copyOf = (records: readonly AnyRecord[]) => ({
  made: '2031-05-17T12:00:00Z',
  records,
  files: new Map(),
  thumbnails: new Map(),
});
/** The version kept beside the entry. */
const beside = async () =>
  must(await book.list()).find(({ conflictOf }) => conflictOf === entry.id)?.id ?? null;

// One entry that two devices changed apart, met in one book.
beforeEach(async () => {
  freshDisk();
  const first = await openMade({ name: 'first', syncStorage: null });
  entry = must(await first.put({ kind: 'harmony', body: harmonyBodyOf('Jay') })).entry;
  const start = await recordsOf(first);
  book = await openMade({ name: 'second', syncStorage: null });
  must(await importCopy(book, copyOf(start)));
  const change = (of: Book, name: string) =>
    of.put({ kind: 'harmony', over: entry, body: { ...entry.body, name } });
  theirs = must(await change(first, 'As the first has it')).entry;
  for (let i = 0; i < 5; i++) must(await change(book, 'As the second has it'));
  must(await importCopy(book, copyOf(await recordsOf(first))));
});

describe('a conflict ends', () => {
  test.each<[ConflictChoice, readonly string[], string]>([
    ['the one in force', ['As the second has it'], 'As the first has it'],
    ['the one beside', ['As the first has it'], 'As the second has it'],
  ])('%s is kept: the other is in the bin, whole', async (kept, left, away) => {
    const other = (await beside())!;
    expect(await names()).toEqual(['As the first has it', 'As the second has it']);
    const { undo } = must(await book.resolveConflict(entry.id, other, kept));
    expect(await names()).toEqual(left);
    // Whatever was made from the entry still finds it.
    expect(must(await book.get('harmony', entry.id)).body.name).toBe(left[0]);
    expect(must(await book.bin()).map(({ name }) => name)).toEqual([away]);
    must(await undo());
    expect(await names()).toEqual(['As the first has it', 'As the second has it']);
    expect(must(await book.get('harmony', entry.id)).body.name).toBe('As the second has it');
    expect(await beside()).toBe(other);
  });

  test('both are kept: two entries, and their copy brings no conflict back', async () => {
    const other = (await beside())!;
    const { undo } = must(await book.resolveConflict(entry.id, other, 'both'));
    expect(await beside()).toBeNull();
    expect(await names()).toEqual(['As the first has it', 'As the second has it']);
    must(await importCopy(book, copyOf([theirs as AnyRecord])));
    expect(await beside()).toBeNull();
    expect(await names()).toHaveLength(2);
    must(await undo());
    expect(await beside()).toBe(other);
  });

  test.each<ConflictChoice>(['the one in force', 'the one beside', 'both'])(
    'decided, %s, it is decided in every book that learns of it',
    async (kept) => {
      const before = await recordsOf(book);
      must(await book.resolveConflict(entry.id, (await beside())!, kept));
      const after = await recordsOf(book);
      const merged = mergeBooks(before, after);
      expect(mergeBooks(after, before)).toEqual(merged);
      expect(new Map(merged.map((record) => [record.id, record]))).toEqual(
        new Map(after.map((record) => [record.id, record])),
      );
    },
  );

  test('taken back, it keeps what was changed since', async () => {
    const other = (await beside())!;
    const { undo } = must(await book.resolveConflict(entry.id, other, 'the one beside'));
    const now = must(await book.get('harmony', entry.id));
    const body = { ...now.body, note: 'Seen again in the evening' };
    must(await book.put({ kind: 'harmony', over: now, body }));
    must(await undo());
    expect(must(await book.get('harmony', entry.id)).body).toMatchObject({
      name: 'As the second has it',
      note: 'Seen again in the evening',
    });
    expect(await names()).toEqual(['As the first has it', 'As the second has it']);
  });

  test('what is not there cannot be decided', async () => {
    expect(await book.resolveConflict(entry.id, 'nobody-0001', 'both')).toEqual({
      ok: false,
      fault: { code: 'not-found' },
    });
  });
});
