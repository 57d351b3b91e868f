/** Removing and restoring the entries of the sample book that comes with Kingcup. */
import { ok, type Result } from '../../result.ts';
import { deleted } from '../merge/next-version.ts';
import type { BookFault } from '../schema/book-fault.ts';
import { type AnyRecord, filesOf, linksOf, readRecord } from '../schema/record.ts';
import { isSample, SAMPLE_DEVICE } from '../schema/sample-ids.ts';
import type { TableName, Transaction } from '../store/database.ts';
import {
  deleteUnreferencedFiles,
  issueVersionMetadata,
  storeEntry,
} from '../store/entry-transactions.ts';
import type { Book, Undo } from '../store/open-book.ts';

const ALL: readonly TableName[] = ['records', 'cards', 'files', 'thumbnails', 'meta'];

interface ThrownAway {
  /** Number of entries moved to the bin. */
  readonly away: number;
  /** Number of entries that stay because the painter changed or used them. */
  readonly stay: number;
  readonly undo: Undo;
}

/**
 * Moves the sample book to the bin in one transaction, except entries that the painter changed or
 * made other entries from.
 */
export const binSampleBook = (book: Book): Promise<Result<ThrownAway, BookFault>> =>
  book.gateway.write(null, ALL, async (transaction) => {
    const all = await everything(transaction);
    const there = all.filter(({ deletedAt }) => deletedAt === undefined);
    const stays = keptWith(there);
    const away = there.filter(({ id }) => isSample(id) && !stays.has(id));
    const marks = await issueVersionMetadata(transaction, book.device, book.nowMs(), away);
    const gone = away.map((record) => deleted(record, marks));
    for (const record of gone) await storeEntry(transaction, record);
    const stay = there.filter(({ id }) => isSample(id) && stays.has(id)).length;
    const undo = () => putBack(book, away, marks.clock);
    return { value: { away: away.length, stay, undo }, ids: away.map(({ id }) => id) };
  });

/** Restores the exact previous records, so that the sample book counts as unchanged again. */
const putBack = (
  book: Book,
  records: readonly AnyRecord[],
  clock: string,
): Promise<Result<null, BookFault>> =>
  book.gateway.write(null, ALL, async (transaction) => {
    const ids: string[] = [];
    for (const record of records) {
      const now = readRecord(await transaction.objectStore('records').get(record.id));
      // Entries changed since then, or purged, stay as they are.
      if (!now.ok || now.value.clock !== clock || now.value.purged) continue;
      await storeEntry(transaction, record);
      ids.push(record.id);
    }
    return { value: null, ids };
  });

/**
 * Deletes the tombstones of the sample entries, so that the sample book can be imported again.
 * Entries that the painter had changed stay in the bin.
 */
export async function deleteSampleTombstones(book: Book): Promise<Result<null, BookFault>> {
  const forgotten = await book.gateway.write(null, ALL, async (transaction) => {
    const all = await everything(transaction);
    const gone = all.filter(
      (record) => isSample(record.id) && record.deletedAt !== undefined && isAsItCame(record),
    );
    for (const { id } of gone) {
      await transaction.objectStore('records').delete(id);
      await transaction.objectStore('cards').delete(id);
    }
    await deleteUnreferencedFiles(
      transaction,
      gone.flatMap((record) => filesOf(record).map(({ file }) => file)),
    );
    return { value: null, ids: gone.map(({ id }) => id) };
  });
  return forgotten.ok ? ok(null) : forgotten;
}

/**
 * True for an entry that is purged, or whose only version besides the sample book's is its move to
 * the bin.
 */
const isAsItCame = ({ seen, clock, purged }: AnyRecord): boolean =>
  purged === true ||
  Object.entries(seen).every(
    ([device, spans]) =>
      device === SAMPLE_DEVICE || spans.every(([from, to]) => from === clock && to === clock),
  );

async function everything(transaction: Transaction<'readwrite'>): Promise<readonly AnyRecord[]> {
  const raw = await transaction.objectStore('records').getAll();
  return raw.flatMap((one) => {
    const record = readRecord(one);
    return record.ok ? [record.value] : [];
  });
}

/** The painter's own entries and all entries that these were made from. */
function keptWith(records: readonly AnyRecord[]): ReadonlySet<string> {
  const byId = new Map(records.map((record) => [record.id, record]));
  const stays = new Set<string>();
  const follow = (id: string) => {
    const record = byId.get(id);
    if (!record || stays.has(id)) return;
    stays.add(id);
    for (const link of linksOf(record)) follow(link);
  };
  for (const { id, device } of records) if (!isSample(id) || device !== SAMPLE_DEVICE) follow(id);
  return stays;
}
