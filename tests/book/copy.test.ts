import { unzipSync, zipSync } from 'fflate';
import { beforeEach, describe, expect, test } from 'vitest';
import type { AnyRecord } from '../../src/book/schema/record.ts';
import type { Book } from '../../src/book/store/open-book.ts';
import { saveGathering, saveSpecimen } from '../../src/book/store/save-specimen.ts';
import {
  importCopy,
  makeCopy,
  noteCopy,
  planCopies,
  previewCopy,
  sinceCopy,
} from '../../src/book/transfer/copies.ts';
import { FORMAT, INDEX, SEAL, VERSION } from '../../src/book/transfer/copy-format.ts';
import { archiveVolumes } from '../../src/book/transfer/pack.ts';
import { openCopy } from '../../src/book/transfer/unpack.ts';
import { failAtCommit } from './disk.ts';
import { colour, freshDisk, harmonyBodyOf, must, NOON, openMade, picture } from './made.ts';

const { subtle } = crypto;
beforeEach(() => {
  freshDisk();
});

/** A specimen with its gathering, two harmonies, one of them in the bin. */
async function filled(options = {}): Promise<Book> {
  const book = await openMade(options);
  const { entry } = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-17'));
  const labels = { width: 3, height: 2, data: new Uint8Array([0, 1, 0, 1, 255, 0]) };
  const colours = [colour('near yellow ochre', [66, 11, 48], 0.8)];
  const gathered = { width: 64, height: 48, colours, labels, remarks: [] };
  must(await saveGathering(book, entry, { gathered }));
  const body = harmonyBodyOf('Lane', { specimen: entry.id });
  must(await book.put({ kind: 'harmony', id: 'harmony-lane', body }));
  must(await book.put({ kind: 'harmony', id: 'harmony-mill', body: harmonyBodyOf('Mill') }));
  must(await book.remove('harmony-mill'));
  return book;
}

async function zipOf(book: Book, ids?: readonly string[]) {
  const made = must(await makeCopy(book, { nowMs: NOON, ...(ids ? { ids } : {}) }));
  return new Uint8Array(await new Blob([...made.pieces]).arrayBuffer());
}

async function everything(book: Book) {
  const tables = ['records', 'cards', 'files', 'thumbnails'] as const;
  return must(
    await book.gateway.read(tables, (transaction) =>
      Promise.all(tables.map((table) => transaction.objectStore(table).getAll())),
    ),
  );
}

test('brought into an empty book, a copy is the book', async () => {
  const book = await filled();
  const before = await everything(book);
  const zip = await zipOf(book);
  book.close();
  freshDisk();
  const other = await openMade();
  const copy = must(await openCopy(zip, { subtle }));
  expect(copy.made).toBe(new Date(NOON).toISOString());
  const preview = must(await previewCopy(other, copy));
  expect([preview.added.length, preview.deleted.length, preview.kept.length]).toEqual([2, 1, 0]);
  must(await importCopy(other, copy));
  expect(await everything(other)).toEqual(before);
  expect(other.device).not.toBe(book.device);
});

test('is plain to look into: a seal, an index, photographs as files', async () => {
  const entries = unzipSync(await zipOf(await filled()));
  const names = Object.keys(entries).map((name) => name.replace(/[0-9a-f]{64}/, '#'));
  expect(names).toEqual([
    ...['photographs/#.jpg', 'thumbnails/#.jpg', 'maps/#.bin', 'book.json', 'kingcup.json'],
  ]);
  const index = JSON.parse(new TextDecoder().decode(entries[INDEX]));
  expect([index.format, index.version, index.records.length]).toEqual([FORMAT, VERSION, 3]);
  expect(JSON.parse(new TextDecoder().decode(entries[SEAL]))).toMatchObject({ format: FORMAT });
});

test('brought in again, nothing is new', async () => {
  const book = await filled();
  const before = await everything(book);
  const copy = must(await openCopy(await zipOf(book), { subtle }));
  const { added, changed, deleted, kept, same } = must(await importCopy(book, copy));
  expect([added, changed, deleted, kept, same]).toEqual([[], [], [], [], 3]);
  expect(await everything(book)).toEqual(before);
});

test('a second device is merged, and undone', async () => {
  const book = await filled();
  const zip = await zipOf(book);
  const diskOne = globalThis.indexedDB;
  freshDisk();
  const other = await openMade();
  must(await importCopy(other, must(await openCopy(zip, { subtle }))));
  const there = must(await other.get('harmony', 'harmony-lane'));
  must(await other.put({ kind: 'harmony', over: there, body: harmonyBodyOf('Lane there') }));
  must(await other.put({ kind: 'harmony', id: 'harmony-weir', body: harmonyBodyOf('Weir') }));
  const back = await zipOf(other);

  globalThis.indexedDB = diskOne;
  const here = must(await book.get('harmony', 'harmony-lane'));
  must(await book.put({ kind: 'harmony', over: here, body: harmonyBodyOf('Lane here') }));
  const copy = must(await openCopy(back, { subtle }));
  const preview = must(await previewCopy(book, copy));
  expect(preview.added.map(({ id }) => id)).toEqual(['harmony-weir']);
  expect(preview.kept.length).toBe(1);
  const names = async () =>
    must(await book.list('harmony'))
      .map(({ name }) => name)
      .sort();
  const imported = must(await importCopy(book, copy));
  expect(await names()).toEqual(['Lane here', 'Lane there', 'Weir']);
  must(await importCopy(book, copy));
  expect(await names()).toEqual(['Lane here', 'Lane there', 'Weir']);
  must(await imported.undo());
  expect(await names()).toEqual(['Lane here']);
});

test('a conflict settled elsewhere is settled here, and its copy goes', async () => {
  const book = await filled();
  const zip = await zipOf(book);
  const diskOne = globalThis.indexedDB;
  freshDisk();
  const other = await openMade();
  must(await importCopy(other, must(await openCopy(zip, { subtle }))));
  const diskTwo = globalThis.indexedDB;
  must(await other.put({ kind: 'harmony', id: 'harmony-lane', body: harmonyBodyOf('There') }));
  const edited = must(await openCopy(await zipOf(other), { subtle }));
  // The other device goes on from its own version, in knowledge of nothing else.
  must(await other.put({ kind: 'harmony', id: 'harmony-lane', body: harmonyBodyOf('There 2') }));
  const later = must(await openCopy(await zipOf(other), { subtle }));

  globalThis.indexedDB = diskOne;
  must(await book.put({ kind: 'harmony', id: 'harmony-lane', body: harmonyBodyOf('Here') }));
  must(await book.put({ kind: 'harmony', id: 'harmony-lane', body: harmonyBodyOf('Here 2') }));
  const { kept } = must(await importCopy(book, edited));
  expect(kept.map(({ body }) => body?.name)).toEqual(['There']);
  const second = must(await importCopy(book, later));
  expect(second.settled.map(({ body }) => body?.name)).toEqual(['There']);
  const names = async () =>
    must(await book.list('harmony'))
      .map(({ name }) => name)
      .sort();
  expect(await names()).toEqual(['Here 2', 'There 2']);
  must(await second.undo());
  expect(await names()).toEqual(['Here 2', 'There']);
  globalThis.indexedDB = diskTwo;
});

test('of one harmony takes its specimen along, and nothing else', async () => {
  const book = await filled();
  const copy = must(await openCopy(await zipOf(book, ['harmony-lane']), { subtle }));
  expect(copy.records.map(({ kind }) => kind).sort()).toEqual(['harmony', 'specimen']);
  expect([copy.files.size, copy.thumbnails.size]).toEqual([2, 1]);
});

describe('all or nothing', () => {
  test('stopped midway, the book is as it was', async () => {
    const zip = await zipOf(await filled());
    freshDisk();
    const other = await openMade();
    const copy = must(await openCopy(zip, { subtle }));
    const controller = new AbortController();
    const done: number[] = [];
    const stopped = await importCopy(other, copy, {
      signal: controller.signal,
      onProgress(share) {
        done.push(share);
        if (share > 0.3) controller.abort();
      },
    });
    expect(stopped).toEqual({ ok: false, fault: { code: 'stopped' } });
    expect(done).toEqual([0, 1 / 3]);
    expect(await everything(other)).toEqual([[], [], [], []]);
  });

  test('on a full disk, the book is as it was', async () => {
    const zip = await zipOf(await filled());
    freshDisk();
    const other = await openMade();
    const copy = must(await openCopy(zip, { subtle }));
    const mend = failAtCommit(() => new DOMException('', 'QuotaExceededError'));
    const refused = await importCopy(other, copy);
    mend();
    expect(refused).toEqual({ ok: false, fault: { code: 'disk-full' } });
    expect(await everything(other)).toEqual([[], [], [], []]);
  });

  test('making and opening can be stopped', async () => {
    const book = await filled();
    const stopped = { ok: false, fault: { code: 'stopped' } };
    expect(await makeCopy(book, { nowMs: NOON, signal: AbortSignal.abort() })).toEqual(stopped);
    const zip = await zipOf(book);
    expect(await openCopy(zip, { subtle, signal: AbortSignal.abort() })).toEqual(stopped);
  });
});

test('a very large book goes into several copies, which together are the book', async () => {
  const book = await filled();
  const before = await everything(book);
  expect(must(await planCopies(book)).length).toBe(1);
  const volumes = archiveVolumes(before[0] as AnyRecord[], 100_000);
  expect(volumes.length).toBeGreaterThan(1);
  const zips: Uint8Array<ArrayBuffer>[] = [];
  for (const volume of volumes) {
    const { pieces } = must(await makeCopy(book, { nowMs: NOON, volume }));
    zips.push(new Uint8Array(await new Blob([...pieces]).arrayBuffer()));
  }
  freshDisk();
  const other = await openMade();
  for (const zip of zips.reverse())
    must(await importCopy(other, must(await openCopy(zip, { subtle }))));
  expect(await everything(other)).toEqual(before);
});

test('a lost photograph leaves its entry out, says so, and the rest is copied', async () => {
  const book = await filled();
  const [specimen] = must(await book.list('specimen'));
  await book.gateway.write(null, ['files'], async (transaction) => {
    await transaction.objectStore('files').clear();
    return { value: null, ids: [] };
  });
  const made = must(await makeCopy(book, { nowMs: NOON }));
  expect(made.leftOut).toEqual([specimen!.id]);
  const zip = new Uint8Array(await new Blob([...made.pieces]).arrayBuffer());
  expect(must(await openCopy(zip, { subtle })).records.length).toBe(2);
});

test('a book that can only be read can still be copied', async () => {
  const { MIGRATION_STEPS } = await import('../../src/book/store/database.ts');
  const book = await filled({ steps: [...MIGRATION_STEPS, () => {}] });
  book.close();
  const old = await openMade();
  expect(old.readOnly).not.toBeNull();
  expect(must(await openCopy(await zipOf(old), { subtle })).records.length).toBe(3);
});

test('reminders count what changed since the last copy', async () => {
  const book = await filled();
  expect(must(await sinceCopy(book))).toEqual({ last: null, changed: 2 });
  const made = new Date(book.nowMs()).toISOString();
  must(await noteCopy(book, made));
  expect(must(await sinceCopy(book))).toEqual({ last: made, changed: 0 });
  must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Frost') }));
  expect(must(await sinceCopy(book)).changed).toBe(1);
});

describe('is refused', () => {
  const codeOf = async (bytes: Uint8Array<ArrayBuffer>) => {
    const opened = await openCopy(bytes, { subtle });
    return opened.ok ? 'fine' : opened.fault.code;
  };
  const text = (value: unknown) => new TextEncoder().encode(JSON.stringify(value));

  test('when it is something else', async () => {
    expect(await codeOf(new Uint8Array())).toBe('not-a-copy');
    expect(await codeOf(new Uint8Array(picture(3).bytes))).toBe('not-a-copy');
    expect(await codeOf(zipSync({ 'readme.txt': text('hello') }))).toBe('not-a-copy');
    expect(await codeOf(zipSync({ [SEAL]: text({ format: 'another' }) }))).toBe('not-a-copy');
  });

  test('when a newer program made it', async () => {
    const seal = text({ format: FORMAT, version: VERSION + 1, something: 'else' });
    expect(await codeOf(zipSync({ [SEAL]: seal }))).toBe('copy-newer');
  });

  test('when it was cut short', async () => {
    const zip = await zipOf(await filled());
    for (const share of [0.1, 0.5, 0.9, 0.999])
      expect(await codeOf(zip.slice(0, zip.length * share))).toBe('copy-damaged');
  });
});
