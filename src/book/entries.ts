import { cardOf } from './card.ts';
import { START } from './clock.ts';
import { Refusal, type Transaction } from './database.ts';
import { sameValue } from './merge.ts';
import { type AnyRecord, type Entry, filesOf, hasBody, readRecord } from './record.ts';
import { type Marks, nextMarks, purged } from './version.ts';

/** What happens to entries inside one transaction: these await nothing but the store. */
type Write = Transaction<'readwrite'>;

/** The marks of this device's next version, later than any it has given out in any window. */
export async function stamp(
  transaction: Write,
  device: string,
  nowMs: number,
  known: readonly AnyRecord[],
): Promise<Marks> {
  const meta = transaction.objectStore('meta');
  const marks = nextMarks(device, (await meta.get('clock')) ?? START, nowMs, known);
  await meta.put(marks.clock, 'clock');
  return marks;
}

/** An entry and its card, checked; every file that it needs must be there by now. */
export async function store(transaction: Write, record: AnyRecord): Promise<void> {
  const checked = readRecord(record);
  if (!checked.ok) throw new Refusal(checked.fault);
  await transaction.objectStore('records').put(record);
  const card = cardOf(record);
  if (card) await transaction.objectStore('cards').put(card);
  else await transaction.objectStore('cards').delete(record.id);
  for (const { file } of filesOf(record))
    if ((await transaction.objectStore('files').getKey(file)) === undefined)
      throw new Refusal({ code: 'bad-record', where: `file ${file}` });
}

/** The entry as it is now; refused where there is none, or only the mark of its deletion. */
export async function current(transaction: Write, id: string): Promise<Entry> {
  const raw = await transaction.objectStore('records').get(id);
  if (!raw) throw new Refusal({ code: 'not-found' });
  const found = readRecord(raw);
  if (!found.ok)
    throw new Refusal(found.fault.code === 'newer-record' ? found.fault : { code: 'damaged' });
  if (!hasBody(found.value)) throw new Refusal({ code: 'not-found' });
  return found.value;
}

/** Takes entries out of the bin for good, and the files that nothing else needs. */
export async function clear(transaction: Write, ids: readonly string[]): Promise<void> {
  const loose = new Set<string>();
  for (const id of ids) {
    const record = await current(transaction, id);
    for (const { file } of filesOf(record)) loose.add(file);
    await store(transaction, purged(record));
  }
  await dropLoose(transaction, loose);
}

/** Removes those of these files that no entry needs any more. */
export async function dropLoose(transaction: Write, loose: Iterable<string>): Promise<void> {
  const needed = transaction.objectStore('cards').index('files');
  for (const file of loose) {
    if ((await needed.count(file)) > 0) continue;
    await transaction.objectStore('files').delete(file);
    await transaction.objectStore('thumbnails').delete(file);
  }
}

/**
 * Two changes of one body that began from the same: field by field, whichever side changed it.
 * @returns the body, `next` winning where both changed a field, and whether that happened
 */
export function weave<Body extends object>(
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
