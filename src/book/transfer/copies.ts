import { ok, type Result } from '../../result.ts';
import { type MergePreview, mergeBooks, previewMerge } from '../merge/merge-books.ts';
import { deleted } from '../merge/next-version.ts';
import type { BookFault } from '../schema/book-fault.ts';
import type { Subtle } from '../schema/digest.ts';
import { type AnyRecord, filesOf, linksOf, readRecord } from '../schema/record.ts';
import { BookFaultError, type TableName } from '../store/database.ts';
import {
  deleteUnreferencedFiles,
  issueVersionMetadata,
  storeEntry,
} from '../store/entry-transactions.ts';
import type { Book, Undo } from '../store/open-book.ts';
import type { CancelAndProgress } from './copy-format.ts';
import { archiveVolumes, type Packed, packCopy } from './pack.ts';
import type { Copy } from './unpack.ts';

const ALL: readonly TableName[] = ['records', 'cards', 'files', 'thumbnails', 'meta'];

interface CopyRequest extends CancelAndProgress {
  readonly subtle?: Subtle;
  /** Milliseconds since 1970. */
  readonly nowMs: number;
  /** Copies only these entries and those that they were made from, to share with someone. */
  readonly ids?: readonly string[];
  /**
   * Copies only the entries of one volume of {@link planCopies}. Without `ids` and `volume` the
   * copy has the whole book.
   */
  readonly volume?: readonly string[];
}
interface MadeCopy extends Packed {
  /** The zip, in chunks: `new Blob(pieces)`. */
  readonly pieces: readonly Uint8Array<ArrayBuffer>[];
  readonly made: string;
}

/**
 * Makes a copy of the book, of one volume, or of some entries. Works on a read-only book too.
 * @returns the fault `stopped` after an abort, `book-too-large`, or the fault of a failed read
 */
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
    const found = await book.gateway.read([table], (transaction) =>
      transaction.objectStore(table).get(id),
    );
    if (!found.ok) throw new BookFaultError(found.fault);
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
    if (error instanceof BookFaultError) return { ok: false, fault: error.fault };
    throw error;
  }
}

/**
 * Plans the volumes of a full copy: the entries of each. Only very large books need more than one.
 */
export async function planCopies(
  book: Book,
): Promise<Result<readonly (readonly string[])[], BookFault>> {
  const all = await readAll(book);
  return all.ok ? ok(archiveVolumes(all.value.records)) : all;
}

/**
 * Records that the painter has the copy, so that reminders count from then on.
 * @param made ISO date and time of the copy
 */
export const noteCopy = (book: Book, made: string): Promise<Result<null, BookFault>> =>
  book.remember('copied', made);

interface SinceCopy {
  /** ISO date and time of the last copy; null when none was made on this device. */
  readonly last: string | null;
  /** Number of entries changed since then. */
  readonly changed: number;
}

/** How much would be lost with this device; decides when to remind of a copy. */
export async function sinceCopy(book: Book): Promise<Result<SinceCopy, BookFault>> {
  const last = await book.recall('copied');
  if (!last.ok) return last;
  const cards = await book.list();
  if (!cards.ok) return cards;
  const changed = cards.value.filter((card) => card.changed > (last.value ?? '')).length;
  return ok({ last: last.value, changed });
}

/** Previews the changes that importing a copy would make. */
export async function previewCopy(
  book: Book,
  copy: Copy,
): Promise<Result<MergePreview, BookFault>> {
  const all = await readAll(book);
  if (!all.ok) return all;
  const { records } = all.value;
  return ok(previewMerge(records, mergeBooks(records, copy.records)));
}

interface Imported extends MergePreview {
  readonly undo: Undo;
}

/**
 * Merges a copy into the book in one transaction: all of it or nothing.
 * @returns the fault `stopped` after an abort, or `newer-record` when the book has entries that
 *   this version cannot read
 */
export async function importCopy(
  book: Book,
  copy: Copy,
  { signal, onProgress }: CancelAndProgress = {},
): Promise<Result<Imported, BookFault>> {
  return book.gateway.write(null, ALL, async (transaction) => {
    const before: AnyRecord[] = [];
    for (const raw of await transaction.objectStore('records').getAll()) {
      const record = readRecord(raw);
      if (record.ok) before.push(record.value);
      else if (record.fault.code === 'newer-record') throw new BookFaultError(record.fault);
    }
    const preview = previewMerge(before, mergeBooks(before, copy.records));
    const changes = [...preview.added, ...preview.changed, ...preview.deleted, ...preview.kept];
    const was = new Map(before.map((record) => [record.id, record]));
    const loose = new Set<string>();
    for (const [i, record] of changes.entries()) {
      if (signal?.aborted) throw new BookFaultError({ code: 'stopped' });
      onProgress?.(i / changes.length);
      for (const { file } of filesOf(record)) {
        const stored = copy.files.get(file);
        const thumbnail = copy.thumbnails.get(file);
        if (stored) await transaction.objectStore('files').put(stored);
        if (thumbnail) await transaction.objectStore('thumbnails').put(thumbnail);
      }
      await storeEntry(transaction, record);
      const old = was.get(record.id);
      if (old && record.purged) for (const { file } of filesOf(old)) loose.add(file);
    }
    for (const { id } of preview.settled) {
      await transaction.objectStore('records').delete(id);
      await transaction.objectStore('cards').delete(id);
    }
    await deleteUnreferencedFiles(transaction, loose);
    if (signal?.aborted) throw new BookFaultError({ code: 'stopped' });
    const replaced = changes.map((record) => ({ record, old: was.get(record.id) ?? null }));
    const value = { ...preview, undo: () => takeBack(book, replaced, preview.settled) };
    return { value, ids: [...changes, ...preview.settled].map(({ id }) => id) };
  });
}

/** Undoes an import by writing newer versions, so that other copies of the book learn of it too. */
async function takeBack(
  book: Book,
  replaced: readonly { readonly record: AnyRecord; readonly old: AnyRecord | null }[],
  settled: readonly AnyRecord[],
): Promise<Result<null, BookFault>> {
  return book.gateway.write(null, ALL, async (transaction) => {
    const ids: string[] = [];
    for (const { record, old } of replaced) {
      const raw = await transaction.objectStore('records').get(record.id);
      const now = raw ? readRecord(raw) : null;
      // Entries changed since the import, or purged, stay as they are.
      if (!now?.ok || now.value.purged || now.value.clock !== record.clock) continue;
      const marks = await issueVersionMetadata(transaction, book.device, book.nowMs(), [now.value]);
      if (!old || old.purged) await storeEntry(transaction, deleted(now.value, marks));
      else {
        const { deletedAt } = old;
        const { deletedAt: _, ...kept } = now.value;
        const binned = deletedAt === undefined ? {} : { deletedAt };
        await storeEntry(transaction, {
          ...kept,
          ...marks,
          ...binned,
          body: old.body,
        } as AnyRecord);
      }
      ids.push(record.id);
    }
    for (const record of settled) {
      const marks = await issueVersionMetadata(transaction, book.device, book.nowMs(), [record]);
      await storeEntry(transaction, { ...record, ...marks });
      ids.push(record.id);
    }
    return { value: null, ids };
  });
}

/** All readable entries, and the ids of the unreadable ones. */
async function readAll(book: Book) {
  return book.gateway.read(['records'], async (transaction) => {
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
