import { sameValue } from '../merge/merge-books.ts';
import { nextVersionMetadata, purged, type VersionMetadata } from '../merge/next-version.ts';
import { summaryOfEntry } from '../schema/entry-summary.ts';
import { START } from '../schema/hybrid-clock.ts';
import { type AnyRecord, type Entry, filesOf, hasBody, readRecord } from '../schema/record.ts';
import { BookFaultError, type Transaction } from './database.ts';

/**
 * Changes to entries inside one transaction. They await only calls of the store, because anything
 * else would end the transaction.
 */
type Write = Transaction<'readwrite'>;

/**
 * Issues the version metadata of this device's next version, later than any that it has issued in
 * any window.
 * @param nowMs milliseconds since 1970
 * @param known the versions that the new one replaces
 */
export async function issueVersionMetadata(
  transaction: Write,
  device: string,
  nowMs: number,
  known: readonly AnyRecord[],
): Promise<VersionMetadata> {
  const meta = transaction.objectStore('meta');
  const marks = nextVersionMetadata(device, (await meta.get('clock')) ?? START, nowMs, known);
  await meta.put(marks.clock, 'clock');
  return marks;
}

/**
 * Stores an entry and its summary.
 * @throws Refusal with `bad-record` when the entry is invalid or one of its files is missing
 */
export async function storeEntry(transaction: Write, record: AnyRecord): Promise<void> {
  const checked = readRecord(record);
  if (!checked.ok) throw new BookFaultError(checked.fault);
  await transaction.objectStore('records').put(record);
  const card = summaryOfEntry(record);
  if (card) await transaction.objectStore('cards').put(card);
  else await transaction.objectStore('cards').delete(record.id);
  for (const { file } of filesOf(record))
    if ((await transaction.objectStore('files').getKey(file)) === undefined)
      throw new BookFaultError({ code: 'bad-record', where: `file ${file}` });
}

/**
 * The current version of an entry.
 * @throws Refusal with `not-found` when there is no such entry or it was purged, `damaged` when it
 *   cannot be read, or `newer-record`
 */
export async function readCurrentEntry(transaction: Write, id: string): Promise<Entry> {
  const raw = await transaction.objectStore('records').get(id);
  if (!raw) throw new BookFaultError({ code: 'not-found' });
  const found = readRecord(raw);
  if (!found.ok)
    throw new BookFaultError(
      found.fault.code === 'newer-record' ? found.fault : { code: 'damaged' },
    );
  if (!hasBody(found.value)) throw new BookFaultError({ code: 'not-found' });
  return found.value;
}

/** Purges entries from the bin, and deletes the files that no other entry needs. */
export async function purgeEntries(transaction: Write, ids: readonly string[]): Promise<void> {
  const loose = new Set<string>();
  for (const id of ids) {
    const record = await readCurrentEntry(transaction, id);
    for (const { file } of filesOf(record)) loose.add(file);
    await storeEntry(transaction, purged(record));
  }
  await deleteUnreferencedFiles(transaction, loose);
}

/** Deletes those of the given files that no entry needs any more, with their thumbnails. */
export async function deleteUnreferencedFiles(
  transaction: Write,
  loose: Iterable<string>,
): Promise<void> {
  const needed = transaction.objectStore('cards').index('files');
  for (const file of loose) {
    if ((await needed.count(file)) > 0) continue;
    await transaction.objectStore('files').delete(file);
    await transaction.objectStore('thumbnails').delete(file);
  }
}

/**
 * Three-way merge of two versions of a body with a common base, field by field.
 * @param now  the version in the book
 * @param next the version to be written
 * @returns the merged body, with the value of `next` where both changed a field differently, and
 *   whether that happened
 */
export function mergeFields<Body extends object>(
  base: Body,
  now: Body,
  next: Body,
): { readonly body: Body; readonly clash: boolean } {
  const [from, theirs, ours] = [base, now, next] as unknown as Record<string, unknown>[];
  const body: Record<string, unknown> = {};
  let clash = false;
  for (const key of new Set([...Object.keys(theirs!), ...Object.keys(ours!)])) {
    const oursChanged = !sameValue(ours![key], from![key]);
    const theirsChanged = !sameValue(theirs![key], from![key]);
    if (oursChanged && theirsChanged && !sameValue(ours![key], theirs![key])) clash = true;
    const value = oursChanged ? ours![key] : theirs![key];
    if (value !== undefined) body[key] = value;
  }
  return { body: body as Body, clash };
}
