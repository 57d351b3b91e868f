import { beforeEach, expect, test } from 'vitest';
import { saveGathering, saveSpecimen } from '../../src/book/store/save-specimen.ts';
import type { Locks } from '../../src/book/store/unused-maps.ts';
import { colour, freshDisk, harmonyBodyOf, must, NOON, openMade, picture } from './made.ts';

beforeEach(() => {
  freshDisk();
});
const DAY = 86_400_000;
const on = (day: number) => ({ now: () => NOON + day * DAY });

test('empties itself after thirty days, keeping the mark of what was deleted', async () => {
  const book = await openMade(on(0));
  const { entry } = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-17'));
  must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
  must(await book.remove(entry.id));
  book.close();

  const later = await openMade(on(29));
  expect(must(await later.bin()).length).toBe(1);
  later.close();
  const latest = await openMade(on(31));
  await expect.poll(async () => must(await latest.bin()).length).toBe(0);
  expect(must(await latest.list()).map(({ name }) => name)).toEqual(['Lane']);
  const { file } = entry.body.photo;
  expect(await latest.photograph(file)).toEqual({ ok: false, fault: { code: 'not-found' } });
  const [mark] = must(
    await latest.gateway.read(['records'], (transaction) =>
      Promise.all([transaction.objectStore('records').get(entry.id)]),
    ),
  );
  expect(mark).toMatchObject({ id: entry.id, purged: true, body: null });
  const restored = await latest.restore(entry.id);
  expect(restored).toEqual({ ok: false, fault: { code: 'not-found' } });
  expect(latest.saving.now.state).toBe('saved');
});

test('a clock that was wrong on the day of deletion does not empty it early', async () => {
  const book = await openMade(on(0));
  const { entry } = must(await book.put({ kind: 'harmony', body: harmonyBodyOf('Lane') }));
  book.close();
  const astray = await openMade(on(-4000));
  must(await astray.remove(entry.id));
  astray.close();
  const again = await openMade(on(1));
  expect(must(await again.emptyBin(new Date(NOON - 29 * DAY).toISOString()))).toBe(0);
  expect(must(await again.bin()).length).toBe(1);
});

test('an entry that cannot be read is left for a copy to mend, the others go', async () => {
  const book = await openMade();
  const ids = ['harmony-lane', 'harmony-mill'] as const;
  for (const id of ids) {
    must(await book.put({ kind: 'harmony', id, body: harmonyBodyOf(id) }));
    must(await book.remove(id));
  }
  await book.gateway.write(null, ['records'], async (transaction) => {
    const records = transaction.objectStore('records');
    const record = (await records.get('harmony-lane'))!;
    await records.put({ ...record, clock: 'spoilt' });
    return { value: null, ids: [] };
  });
  const damaged = { ok: false, fault: { code: 'damaged' } };
  expect(await book.get('harmony', 'harmony-lane')).toEqual(damaged);
  expect(must(await book.emptyBin('2999-01-01T00:00:00.000Z'))).toBe(1);
  expect(must(await book.bin()).map(({ id }) => id)).toEqual(['harmony-lane']);
});

test('a photograph that another entry needs stays', async () => {
  const book = await openMade();
  const first = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-17')).entry;
  const second = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-18')).entry;
  must(await book.remove(first.id));
  expect(must(await book.emptyBin('2999-01-01T00:00:00.000Z'))).toBe(1);
  expect(must(await book.photograph(second.body.photo.file)).bytes).toEqual(picture(1).bytes);
});

/** One window after another, as the browser's own locks would have it. */
function locksOf(): Locks & { readonly holders: number } {
  let holders = 0;
  return {
    get holders() {
      return holders;
    },
    async request(_name, { ifAvailable }, work) {
      if (ifAvailable && holders > 0) return work(null);
      holders++;
      try {
        return await work({});
      } finally {
        holders--;
      }
    },
  };
}

test('maps that were gathered anew are swept, but not under the eyes of another window', async () => {
  const locks = locksOf();
  const book = await openMade({ locks });
  const { entry } = must(await saveSpecimen(book, picture(1), picture(2), '2031-05-17'));
  const gather = async (cell: number) => {
    const labels = { width: 2, height: 1, data: new Uint8Array([cell, 255]) };
    const colours = [colour('near white', [90, 0, 2], 1)];
    const gathered = { width: 64, height: 48, colours, labels, remarks: [] };
    must(await saveGathering(book, entry, { gathered }));
  };
  await gather(0);
  await gather(1);
  const files = async (from: typeof book) =>
    must(
      await from.gateway.read(['files'], (transaction) => transaction.objectStore('files').count()),
    );
  expect(await files(book)).toBe(3);
  const second = await openMade({ locks });
  await second.list();
  expect(await files(second)).toBe(3);
  second.close();
  book.close();
  await expect.poll(() => locks.holders).toBe(0);
  const alone = await openMade({ locks });
  await expect.poll(() => files(alone)).toBe(2);
  expect(must(await alone.photograph(entry.body.photo.file)).bytes).toEqual(picture(1).bytes);
});
