import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { saveSpecimen } from '../../src/book/store/save-specimen.ts';
import { dropOnce, failAtCommit } from './disk.ts';
import { freshDisk, harmonyBodyOf, must, openMade, picture } from './made.ts';

let mend = () => {};
beforeEach(() => {
  freshDisk();
});
afterEach(() => mend());

const full = () => new DOMException('', 'QuotaExceededError');

describe('a full disk', () => {
  test('is a fault, leaves the book as it was, and what failed can be tried again', async () => {
    const book = await openMade();
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    let isFull = true;
    mend = failAtCommit(() => (isFull ? full() : null));

    const line: string[] = [];
    book.saving.subscribe((state) => line.push(state.state));
    const body = harmonyBodyOf('Lane, evening');
    const put = await book.put({ kind: 'harmony', over: entry, body });
    expect(put).toEqual({ ok: false, fault: { code: 'disk-full' } });
    const photo = await saveSpecimen(book, picture(1), picture(2), '2031-05-17');
    expect(photo).toEqual({ ok: false, fault: { code: 'disk-full' } });
    expect(line).toEqual(['saved', 'saving', 'not saved', 'not saved', 'not saved']);
    expect(must(await book.get('harmony', entry.id))).toEqual(entry);
    expect(must(await book.list()).map(({ name }) => name)).toEqual(['Lane']);

    isFull = false;
    await book.retry();
    expect(book.saving.now.state).toBe('saved');
    expect(must(await book.get('harmony', entry.id)).body).toEqual(body);
    const [specimen] = must(await book.list('specimen'));
    expect(must(await book.photograph(specimen!.picture!)).bytes).toEqual(picture(1).bytes);
  });

  test('refuses a deletion and its undo too', async () => {
    const book = await openMade();
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    mend = failAtCommit(full);
    expect(await book.remove(entry.id)).toEqual({ ok: false, fault: { code: 'disk-full' } });
    expect(must(await book.list()).length).toBe(1);
    expect(book.saving.now.state).toBe('not saved');
    mend();
    // Given up, it is not tried again.
    book.saving.forget();
    expect(book.saving.now.state).toBe('saved');
    await book.retry();
    expect(must(await book.list()).length).toBe(1);
  });

  test('never lets a random run of saves lose what was confirmed', async () => {
    const book = await openMade();
    const confirmed = new Map<string, string>();
    let refused = 0;
    let random = 7;
    mend = failAtCommit(() => {
      random = (random * 48271) % 2147483647;
      return random % 3 === 0 ? full() : null;
    });
    for (let i = 0; i < 60; i++) {
      const id = `entry-${String(i % 12).padStart(4, '0')}`;
      const put = await book.put({ kind: 'harmony', id, body: harmonyBodyOf(`text ${i}`) });
      if (put.ok) confirmed.set(id, `text ${i}`);
      else {
        refused++;
        expect(put.fault.code).toBe('disk-full');
      }
    }
    expect(refused).toBeGreaterThan(10);
    expect(confirmed.size).toBeGreaterThan(9);
    mend();
    book.close();
    const again = await openMade();
    const kept = must(await again.list()).map(({ id, name }) => [id, name] as const);
    expect(new Map(kept)).toEqual(confirmed);
  });
});

describe('a connection that the browser dropped', () => {
  test('is opened again and the work done once', async () => {
    const book = await openMade();
    must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    const left = dropOnce();
    must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Mill') }));
    expect(left()).toBe(0);
    expect(must(await book.list()).length).toBe(2);
  });

  test('twice in a row is a fault that can be tried again', async () => {
    const book = await openMade();
    mend = dropOnce(2);
    const put = await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') });
    expect(put).toEqual({ ok: false, fault: { code: 'lost-connection' } });
    expect(book.saving.now.state).toBe('not saved');
    mend();
    await book.retry();
    expect(book.saving.now.state).toBe('saved');
    expect(must(await book.list()).map(({ name }) => name)).toEqual(['Lane']);
  });

  test('at the very end of a write, which may or may not be on disk, makes no second entry', async () => {
    const book = await openMade();
    const lost = () =>
      new DOMException('Connection to Indexed Database server lost.', 'UnknownError');
    let times = 1;
    mend = failAtCommit(() => (times-- > 0 ? lost() : null));
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    expect(must(await book.list()).map(({ id }) => id)).toEqual([entry.id]);
  });
});

test('a browser without a store says so', async () => {
  const { openBook } = await import('../../src/book/store/open-book.ts');
  const refused = {
    open() {
      throw new DOMException('', 'SecurityError');
    },
  };
  const kept = globalThis.indexedDB;
  globalThis.indexedDB = refused as unknown as IDBFactory;
  mend = () => {
    globalThis.indexedDB = kept;
  };
  expect(await openBook({ channel: null })).toEqual({ ok: false, fault: { code: 'no-storage' } });
});
