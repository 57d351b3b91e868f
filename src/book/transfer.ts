import { ok, type Result } from '../result.ts';
import { Refusal, type Table } from './database.ts';
import type { Subtle } from './digest.ts';
import { dropLoose, stamp, store } from './entries.ts';
import type { BookFault } from './faults.ts';
import type { Running } from './format.ts';
import { type MergePreview, mergeBooks, previewMerge } from './merge.ts';
import { type Packed, packCopy, volumesOf } from './pack.ts';
import { type AnyRecord, filesOf, linksOf, readRecord } from './record.ts';
import type { Book, Undo } from './store.ts';
import type { Copy } from './unpack.ts';
import { deleted } from './version.ts';

const ALL: readonly Table[] = ['records', 'cards', 'files', 'thumbnails', 'meta'];

export interface CopyRequest extends Running {
  readonly subtle?: Subtle;
  /** Milliseconds since 1970. */
  readonly nowMs: number;
  /** These entries and what they were made from, to hand to someone. */
  readonly ids?: readonly string[];
  /** One of {@link planCopies}; all of the book when both are absent. */
  readonly volume?: readonly string[];
}
export interface MadeCopy extends Packed {
  /** The zip, in pieces: `new Blob(pieces)`. */
  readonly pieces: readonly Uint8Array<ArrayBuffer>[];
  readonly made: string;
}

/** Makes a copy of the book, or of a few entries to hand to someone. Works on a book that is read only. */
export async function makeCopy(
  book: Book,
  { subtle = crypto.subtle, nowMs, ids, volume, ...running }: CopyRequest,
): Promise<Result<MadeCopy, BookFault>> {
  const all = await readAll(book);
  if (!all.ok) return all;
  const { records } = all.value;
  const made = new Date(nowMs).toISOString();
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  const get = (table: 'files' | 'thumbnails') => async (id: string) => {
    const found = await book.ledger.read([table], (transaction) =>
      transaction.objectStore(table).get(id),
    );
    if (!found.ok) throw new Refusal(found.fault);
    return found.value ?? null;
  };
  const source = {
    records: ids ? withLinks(records, ids) : volume ? among(records, volume) : records,
    file: get('files'),
    thumbnail: get('thumbnails'),
  };
  try {
    const packed = await packCopy(source, (piece) => pieces.push(piece), {
      ...running,
      subtle,
      made,
    });
    if (!packed.ok) return packed;
    const leftOut = [...packed.value.leftOut, ...all.value.unread];
    return ok({ ...packed.value, leftOut, pieces, made });
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, fault: error.fault };
    throw error;
  }
}

/** How many copies the whole book takes, and what goes into each: one, but for very large books. */
export async function planCopies(
  book: Book,
): Promise<Result<readonly (readonly string[])[], BookFault>> {
  const all = await readAll(book);
  return all.ok ? ok(volumesOf(all.value.records)) : all;
}

/** The painter has the copy: reminders count from here. */
export const noteCopy = (book: Book, made: string): Promise<Result<null, BookFault>> =>
  book.remember('copied', made);

export interface SinceCopy {
  /** ISO; null when no copy was ever made here. */
  readonly last: string | null;
  /** Entries changed since. */
  readonly changed: number;
}

/** How much would be lost with this device: what a reminder to make a copy goes by. */
export async function sinceCopy(book: Book): Promise<Result<SinceCopy, BookFault>> {
  const last = await book.recall('copied');
  if (!last.ok) return last;
  const cards = await book.list();
  if (!cards.ok) return cards;
  const changed = cards.value.filter((card) => card.changed > (last.value ?? '')).length;
  return ok({ last: last.value, changed });
}

/** What bringing in a copy would do. */
export async function previewCopy(
  book: Book,
  copy: Copy,
): Promise<Result<MergePreview, BookFault>> {
  const all = await readAll(book);
  if (!all.ok) return all;
  const { records } = all.value;
  return ok(previewMerge(records, mergeBooks(records, copy.records)));
}

export interface Imported extends MergePreview {
  readonly undo: Undo;
}

/** Merges a copy into the book: all of it, in one transaction, or nothing. */
export async function importCopy(
  book: Book,
  copy: Copy,
  { signal, onProgress }: Running = {},
): Promise<Result<Imported, BookFault>> {
  return book.ledger.write(null, ALL, async (transaction) => {
    const before: AnyRecord[] = [];
    for (const raw of await transaction.objectStore('records').getAll()) {
      const record = readRecord(raw);
      if (record.ok) before.push(record.value);
      else if (record.fault.code === 'newer-record') throw new Refusal(record.fault);
    }
    const preview = previewMerge(before, mergeBooks(before, copy.records));
    const changes = [...preview.added, ...preview.changed, ...preview.deleted, ...preview.kept];
    const was = new Map(before.map((record) => [record.id, record]));
    const loose = new Set<string>();
    for (const [i, record] of changes.entries()) {
      if (signal?.aborted) throw new Refusal({ code: 'stopped' });
      onProgress?.(i / changes.length);
      for (const { file } of filesOf(record)) {
        const stored = copy.files.get(file);
        const thumbnail = copy.thumbnails.get(file);
        if (stored) await transaction.objectStore('files').put(stored);
        if (thumbnail) await transaction.objectStore('thumbnails').put(thumbnail);
      }
      await store(transaction, record);
      const old = was.get(record.id);
      if (old && record.purged) for (const { file } of filesOf(old)) loose.add(file);
    }
    for (const { id } of preview.settled) {
      await transaction.objectStore('records').delete(id);
      await transaction.objectStore('cards').delete(id);
    }
    await dropLoose(transaction, loose);
    if (signal?.aborted) throw new Refusal({ code: 'stopped' });
    const replaced = changes.map((record) => ({ record, old: was.get(record.id) ?? null }));
    const value = { ...preview, undo: () => takeBack(book, replaced, preview.settled) };
    return { value, ids: [...changes, ...preview.settled].map(({ id }) => id) };
  });
}

/** Undoes an import by newer versions, as a person would: nothing is forgotten that others may know. */
async function takeBack(
  book: Book,
  replaced: readonly { readonly record: AnyRecord; readonly old: AnyRecord | null }[],
  settled: readonly AnyRecord[],
): Promise<Result<null, BookFault>> {
  return book.ledger.write(null, ALL, async (transaction) => {
    const ids: string[] = [];
    for (const { record, old } of replaced) {
      const raw = await transaction.objectStore('records').get(record.id);
      const now = raw ? readRecord(raw) : null;
      // What was changed since, or is gone for good, stays as it is.
      if (!now?.ok || now.value.purged || now.value.clock !== record.clock) continue;
      const marks = await stamp(transaction, book.device, book.nowMs(), [now.value]);
      if (!old || old.purged) await store(transaction, deleted(now.value, marks));
      else {
        const { deletedAt } = old;
        const { deletedAt: _, ...kept } = now.value;
        const binned = deletedAt === undefined ? {} : { deletedAt };
        await store(transaction, { ...kept, ...marks, ...binned, body: old.body } as AnyRecord);
      }
      ids.push(record.id);
    }
    for (const record of settled) {
      const marks = await stamp(transaction, book.device, book.nowMs(), [record]);
      await store(transaction, { ...record, ...marks });
      ids.push(record.id);
    }
    return { value: null, ids };
  });
}

/** Every entry that can be read, and the ids of those that cannot. */
async function readAll(book: Book) {
  return book.ledger.read(['records'], async (transaction) => {
    const records: AnyRecord[] = [];
    const unread: string[] = [];
    for (const raw of await transaction.objectStore('records').getAll()) {
      const record = readRecord(raw);
      if (record.ok) records.push(record.value);
      else unread.push(String(raw.id));
    }
    return { records, unread };
  });
}

function among(records: readonly AnyRecord[], ids: readonly string[]): readonly AnyRecord[] {
  const wanted = new Set(ids);
  return records.filter(({ id }) => wanted.has(id));
}

function withLinks(records: readonly AnyRecord[], ids: readonly string[]): readonly AnyRecord[] {
  const byId = new Map(records.map((record) => [record.id, record]));
  const wanted = new Set<string>();
  const follow = (id: string) => {
    const record = byId.get(id);
    if (!record || wanted.has(id)) return;
    wanted.add(id);
    for (const link of linksOf(record)) follow(link);
  };
  ids.forEach(follow);
  return records.filter(({ id, deletedAt }) => wanted.has(id) && deletedAt === undefined);
}
