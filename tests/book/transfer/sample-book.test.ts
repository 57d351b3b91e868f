import { webcrypto } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { hasBody, linksOf, readRecord } from '../../../src/book/schema/record.ts';
import { isSample, SAMPLE_DEVICE, SAMPLE_FILE } from '../../../src/book/schema/sample-ids.ts';
import type { Book } from '../../../src/book/store/open-book.ts';
import { importCopy } from '../../../src/book/transfer/copies.ts';
import { binSampleBook, deleteSampleTombstones } from '../../../src/book/transfer/sample-book.ts';
import { openCopy } from '../../../src/book/transfer/unpack.ts';
import { bodies } from '../kinds.ts';
import { freshDisk, harmonyBodyOf, must, openMade } from '../made.ts';

const bytes = new Uint8Array(
  readFileSync(resolve(import.meta.dirname, '../../../samples', SAMPLE_FILE)),
);
const copy = must(await openCopy(bytes, { subtle: webcrypto.subtle as SubtleCrypto }));
const bring = async (book: Book) => must(await importCopy(book, copy));
const names = async (book: Book) => must(await book.list()).map(({ name }) => name);

describe('what is in the sample book', () => {
  test('it is small, and every entry is marked as its own', () => {
    expect(bytes.length).toBeLessThan(1_500_000);
    expect(copy.records.length).toBeGreaterThan(10);
    for (const { id, device, deletedAt } of copy.records) {
      expect(isSample(id), id).toBe(true);
      expect(device).toBe(SAMPLE_DEVICE);
      expect(deletedAt).toBeUndefined();
    }
  });

  test('it goes from the walk to the morning sheet, and every link leads somewhere', () => {
    const kinds = new Set(copy.records.map(({ kind }) => kind));
    const wanted = ['specimen', 'harmony', 'drapery', 'formula', 'passage', 'palette', 'sheet'];
    expect([...wanted, 'leftover'].filter((kind) => !kinds.has(kind as 'sheet'))).toEqual([]);
    const ids = new Set(copy.records.map(({ id }) => id));
    const links = copy.records.flatMap((record) =>
      linksOf(record).map((link) => [record.id, link] as const),
    );
    expect(links.length).toBeGreaterThan(10);
    for (const [id, link] of links) expect(ids, `${id} to ${link}`).toContain(link);
  });

  test('every harmony has its mixtures, and nothing in it is mixed from what is not on the shelf', () => {
    const harmonies = copy.records.flatMap((record) => {
      expect(must(readRecord(record)).id).toBe(record.id);
      return record.kind === 'harmony' && hasBody(record) ? [record] : [];
    });
    expect(harmonies.length).toBeGreaterThan(2);
    for (const record of harmonies) {
      expect(record.body.colours.length).toBeGreaterThanOrEqual(4);
      for (const { mixture, answer } of record.body.colours) {
        expect(mixture!.parts.length).toBeGreaterThan(0);
        expect(answer!.simplest).toEqual(mixture);
      }
    }
  });
});

describe('bringing it in and throwing it away', () => {
  let book: Book;
  beforeEach(async () => {
    freshDisk();
    book = await openMade();
    must(await book.put({ kind: 'harmony', id: 'own-harmony', body: harmonyBodyOf('Lane') }));
  });

  test('it goes in one step, and comes back in one; the painter’s own is never touched', async () => {
    const before = must(await book.get('harmony', 'own-harmony'));
    const brought = await bring(book);
    expect(brought.added.length).toBe(copy.records.length);
    const all = await names(book);
    const thrown = must(await binSampleBook(book));
    expect(thrown).toMatchObject({ away: copy.records.length, stay: 0 });
    expect(await names(book)).toEqual(['Lane']);
    must(await thrown.undo());
    expect(await names(book)).toEqual(all);
    // As untouched as before: it can go again.
    expect(must(await binSampleBook(book)).away).toBe(copy.records.length);
    expect(must(await book.get('harmony', 'own-harmony'))).toEqual(before);
  });

  test('what the painter changed stays, and all that the painter’s own was made from', async () => {
    await bring(book);
    const wall = must(await book.get('harmony', 'sample-harmony-lichened-wall'));
    must(
      await book.put({ kind: 'harmony', over: wall, body: { ...wall.body, name: 'My own wall' } }),
    );
    must(
      await book.put({
        kind: 'drapery',
        id: 'own-drapery',
        body: { ...bodies.drapery, harmony: 'sample-harmony-kingcup' },
      }),
    );
    const thrown = must(await binSampleBook(book));
    // Two harmonies, and the two specimens that they were gathered from.
    expect(thrown.stay).toBe(4);
    const left = (await names(book)).toSorted();
    expect(left).toEqual(
      [
        ...['Kingcups at the weir', 'Lane', 'My own wall', 'North wall of the mill'],
        ...[bodies.drapery.name, 'Weir in September'],
      ].toSorted(),
    );
    expect(must(await binSampleBook(book)).away).toBe(0);
  });

  test('thrown away, it can be brought in once more; the bin is then without it', async () => {
    await bring(book);
    must(await binSampleBook(book));
    expect((await bring(book)).added.length).toBe(0);
    must(await deleteSampleTombstones(book));
    expect(must(await book.bin()).length).toBe(0);
    expect((await bring(book)).added.length).toBe(copy.records.length);
    const photo = must(await book.get('specimen', 'sample-kingcup')).body.photo.file;
    expect(must(await book.photograph(photo)).bytes.byteLength).toBeGreaterThan(10_000);
    must(await binSampleBook(book));
    must(await book.emptyBin('2040-01-01T00:00:00Z'));
    must(await deleteSampleTombstones(book));
    expect((await bring(book)).added.length).toBe(copy.records.length);
  });

  test('what the painter changed and then put into the bin is still there afterwards', async () => {
    await bring(book);
    const wall = must(await book.get('harmony', 'sample-harmony-lichened-wall'));
    const body = { ...wall.body, name: 'My own wall' };
    must(await book.put({ kind: 'harmony', over: wall, body }));
    must(await book.remove(wall.id));
    must(await binSampleBook(book));
    must(await deleteSampleTombstones(book));
    expect(must(await book.bin()).map(({ name }) => name)).toEqual(['My own wall']);
    expect((await bring(book)).added.length).toBe(copy.records.length - 1);
    must(await book.restore(wall.id));
    expect(must(await book.get('harmony', wall.id)).body.name).toBe('My own wall');
  });
});
