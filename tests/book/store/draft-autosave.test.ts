import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { onHide } from '../../../src/book/store/draft-autosave.ts';
import type { Book } from '../../../src/book/store/open-book.ts';
import { failAtCommit } from '../disk.ts';
import { freshDisk, harmonyBodyOf, must, openMade } from '../made.ts';

let book: Book;
const line: string[] = [];
beforeEach(async () => {
  freshDisk();
  book = await openMade();
  line.length = 0;
  book.saving.subscribe(({ state }) => line.push(state));
});
afterEach(() => {
  vi.useRealTimers();
});

const type = (name: string) =>
  book.saveSoon({ kind: 'harmony', id: 'harmony-0001', body: harmonyBodyOf(name) });
const names = async () => must(await book.list()).map(({ name }) => name);

test('what is typed is saving at once and saved soon, only its last state', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  for (const name of ['J', 'Ja', 'Jay']) type(name);
  expect(line).toEqual(['saved', 'saving']);
  vi.advanceTimersByTime(650);
  expect(await names()).toEqual([]);
  vi.advanceTimersByTime(100);
  vi.useRealTimers();
  await expect.poll(names).toEqual(['Jay']);
  expect(line).toEqual(['saved', 'saving', 'saved']);
});

test('a page that hides or closes saves at once', async () => {
  const heard = new Map<string, () => void>();
  const target = {
    addEventListener: (type: string, listener: () => void) => heard.set(type, listener),
    removeEventListener: (type: string) => heard.delete(type),
  };
  const page = { ...target, document: { ...target, visibilityState: 'visible' } };
  const end = onHide(page, () => void book.flush());
  type('Jay');
  heard.get('visibilitychange')?.();
  expect(await names()).toEqual([]);
  page.document.visibilityState = 'hidden';
  heard.get('visibilitychange')?.();
  expect(await names()).toEqual(['Jay']);
  type('Magpie');
  heard.get('pagehide')?.();
  expect(await names()).toEqual(['Magpie']);
  end();
  expect(heard.size).toBe(0);
});

test('a flush tells of a draft that could not be saved, and the line keeps saying so', async () => {
  const mend = failAtCommit(() => new DOMException('', 'QuotaExceededError'));
  type('Jay');
  expect(await book.flush()).toEqual({ ok: false, fault: { code: 'disk-full' } });
  mend();
  expect(line.at(-1)).toBe('not saved');
  await book.retry();
  expect(line.at(-1)).toBe('saved');
  expect(await names()).toEqual(['Jay']);
});

test('a flush with nothing to save is fine', async () => {
  expect(await book.flush()).toEqual({ ok: true, value: null });
});
