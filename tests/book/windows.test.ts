import { openDB } from 'idb';
import { beforeEach, describe, expect, test } from 'vitest';
import type { BookFault } from '../../src/book/schema/book-fault.ts';
import { MIGRATION_STEPS } from '../../src/book/store/database.ts';
import type { BookChange, Channel } from '../../src/book/store/gateway.ts';
import { openBook } from '../../src/book/store/open-book.ts';
import { saveGathering, saveSpecimen } from '../../src/book/store/save-specimen.ts';
import { colour, freshDisk, harmonyBodyOf, must, openMade, picture } from './made.ts';

beforeEach(() => {
  freshDisk();
});

/** Two ends of a channel that hands over at once. */
function channels(): readonly [Channel, Channel] {
  const end = (): Channel => ({ onmessage: null, postMessage() {}, close() {} });
  const [one, two] = [end(), end()];
  const link = (from: Channel, to: Channel) => {
    from.postMessage = (data) => to.onmessage?.({ data } as MessageEvent);
  };
  link(one, two);
  link(two, one);
  return [one, two];
}

describe('two windows on one book', () => {
  test('hear of each other', async () => {
    const [here, there] = channels();
    const [book, other] = [await openMade({ channel: here }), await openMade({ channel: there })];
    const heard: BookChange[] = [];
    other.onChange((change) => heard.push(change));
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    expect(heard).toEqual([{ ids: [entry.id], from: 'another window' }]);
    expect(must(await other.get('harmony', entry.id))).toEqual(entry);
    expect(other.device).toBe(book.device);
  });

  test('changing different things of one entry get both', async () => {
    const [book, other] = [await openMade(), await openMade()];
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    const theirs = { ...entry.body, note: 'after the thaw' };
    must(await other.put({ kind: 'harmony', over: entry, body: theirs }));
    const ours = { ...entry.body, name: 'Lane, evening' };
    const put = must(await book.put({ kind: 'harmony', over: entry, body: ours }));
    expect(put.conflictCopyId).toBeNull();
    expect(put.entry.body).toEqual({
      ...entry.body,
      name: 'Lane, evening',
      note: 'after the thaw',
    });
  });

  test('changing the same keep both, the later one under its own name', async () => {
    const [book, other] = [await openMade(), await openMade()];
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    must(await other.put({ kind: 'harmony', over: entry, body: harmonyBodyOf('Theirs') }));
    const put = must(await book.put({ kind: 'harmony', over: entry, body: harmonyBodyOf('Ours') }));
    expect(put.entry.body.name).toBe('Ours');
    expect(must(await book.get('harmony', put.conflictCopyId!)).body.name).toBe('Theirs');
    const cards = must(await other.list());
    expect(cards.map(({ name }) => name).sort()).toEqual(['Ours', 'Theirs']);
    expect(cards.find(({ name }) => name === 'Theirs')?.conflictOf).toBe(entry.id);
  });

  test('one window never clashes with itself', async () => {
    const book = await openMade();
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('') }));
    for (const name of ['J', 'Ja', 'Jay'])
      must(await book.put({ kind: 'harmony', over: entry, body: { ...entry.body, name } }));
    expect(must(await book.list()).map(({ name }) => name)).toEqual(['Jay']);
  });

  test('what was gathered for an entry in the bin leaves it there; words bring it back', async () => {
    const book = await openMade();
    const { entry } = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-17'));
    must(await book.remove(entry.id));
    const labels = { width: 1, height: 1, data: new Uint8Array(1) };
    const colours = [colour('near white', [90, 0, 2], 1)];
    const gathered = { width: 64, height: 48, colours, labels, remarks: [] };
    must(await saveGathering(book, entry, { gathered }));
    expect(must(await book.list())).toEqual([]);
    expect(must(await book.bin())[0]?.colours.length).toBe(1);
    must(await book.put({ kind: 'specimen', over: entry, body: { ...entry.body, name: 'Jay' } }));
    expect(must(await book.list())[0]).toMatchObject({ name: 'Jay', colours: [{ share: 1 }] });
  });
});

describe('windows of different versions', () => {
  const NEXT = [...MIGRATION_STEPS, () => {}];

  test('the old one lets go, says so and writes no more; the new one opens', async () => {
    const said: BookFault[] = [];
    const old = await openMade({ notice: (fault) => said.push(fault) });
    const { entry } = must(await old.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    const next = await openMade({ steps: NEXT });
    expect(said).toEqual([{ code: 'newer-window' }]);
    const refused = await old.put({ kind: 'harmony', body: harmonyBodyOf('Mill') });
    expect(refused).toEqual({ ok: false, fault: { code: 'newer-window' } });
    expect(old.saving.now.state).toBe('not saved');
    expect(must(await next.get('harmony', entry.id))).toEqual(entry);
  });

  test('one that will not let go is named, and its closing lets the new one on', async () => {
    (await openMade()).close();
    const stubborn = await openDB('studio-book', MIGRATION_STEPS.length);
    const said: BookFault[] = [];
    const opening = openBook({ steps: NEXT, channel: null, notice: (fault) => said.push(fault) });
    await expect.poll(() => said).toEqual([{ code: 'older-window' }]);
    stubborn.close();
    expect((await opening).ok).toBe(true);
  });

  test('a book from a newer version can be read, is never changed, and says so', async () => {
    const next = await openMade({ steps: NEXT });
    const { entry } = must(await next.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    must(await saveSpecimen(next, picture(1), picture(2), '2031-05-17'));
    next.close();
    const old = await openMade();
    expect(old.readOnly).toEqual({ code: 'newer-book' });
    expect(must(await old.list()).length).toBe(2);
    expect(must(await old.get('harmony', entry.id))).toEqual(entry);
    const refused = await old.put({ kind: 'harmony', body: harmonyBodyOf('Mill') });
    expect(refused).toEqual({ ok: false, fault: { code: 'newer-book' } });
    old.close();
    const again = await openMade({ steps: NEXT });
    expect(again.readOnly).toBeNull();
    expect(must(await again.list()).length).toBe(2);
  });

  test('a step that fails leaves the older book whole', async () => {
    const book = await openMade();
    const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
    book.close();
    const broken = [
      ...MIGRATION_STEPS,
      async (database: Parameters<(typeof MIGRATION_STEPS)[number]>[0]) => {
        database.deleteObjectStore('records');
        await Promise.resolve();
        throw new Error('a mistake');
      },
    ];
    const refused = await openBook({ steps: broken, channel: null });
    expect(refused).toMatchObject({ ok: false, fault: { code: 'not-opened' } });
    const again = await openMade();
    expect(again.readOnly).toBeNull();
    expect(must(await again.get('harmony', entry.id))).toEqual(entry);
  });

  test('a book that is removed under an open window is not silently begun anew', async () => {
    const said: BookFault[] = [];
    const book = await openMade({ notice: (fault) => said.push(fault) });
    indexedDB.deleteDatabase('studio-book');
    await expect.poll(() => said).toEqual([{ code: 'book-removed' }]);
    const refused = await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') });
    expect(refused).toEqual({ ok: false, fault: { code: 'book-removed' } });
  });
});
