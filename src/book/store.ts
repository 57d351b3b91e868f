/**
 * The studio book in the browser. What a screen calls:
 *
 *   const opened = await openBook({ notice });          // notice(fault): show bookFaultWords(fault)
 *   if (!opened.ok) ...                                 // say bookFaultWords(opened.fault)
 *   const book = opened.value;                          // book.readOnly: a fault to show, or null
 *   book.saving.subscribe((line) => ...)                // 'saved' | 'saving' | 'not saved' with fault
 *   book.onChange(({ ids, from }) => ...)               // this window or another one wrote: list again
 *
 *   const photo = await book.file({ bytes, type, width, height });        // no EXIF, named by its SHA-256
 *   const saved = await book.put({ kind: 'specimen', body, files: [photo.value], thumbnail });
 *   if (saved.ok) saved.value.entry, await saved.value.undo()
 *   await book.put({ kind: 'harmony', id, over: entry, body: { ...entry.body, name: 'Jay' } });   // rename
 *   book.later({ kind, id, over, body })               // while typing; when the page hides: flush(), note()
 *   await book.list('harmony'), book.get('harmony', id), book.photograph(ref.file), book.thumbnail(card)
 *   await book.remove(id) (answers with undo), book.bin(), book.restore(id), book.retry()
 *
 * Nothing throws for what a painter can act on: every answer is a Result. `ok` means on disk.
 * `keep.ts` has the two steps that screens take most: keeping a photograph and what was gathered.
 * `search.ts` finds among cards, `transfer.ts` makes and brings in copies, `persist.ts` asks the
 * browser to keep the book, `out.ts` writes tables. Every one of these is loaded when it is needed.
 */
import { fail, ok, type Result } from '../result.ts';
import { type Connection, connect, type MigrationStep, Refusal, STEPS } from './database.ts';
import { type Subtle, sha256 } from './digest.ts';
import { createDrafts, type Drafts } from './drafts.ts';
import { type BookFault, faultOf } from './faults.ts';
import { keepHouse, type Locks } from './house.ts';
import { withoutMetadata } from './jpeg.ts';
import { type BookChange, type Channel, createLedger, type Ledger } from './ledger.ts';
import { createReader, type Reader } from './read.ts';
import type { Saving } from './saving.ts';
import { createSettler, type Settler } from './settle.ts';
import { createSlips, ownBox, type SlipBox, type Slips } from './slips.ts';
import { type Guarded, guard, keepsLog } from './torn.ts';
import { createTrace } from './trace.ts';
import { createWriter, type NamedFile, type Writer } from './write.ts';

export type { Draft, NamedFile, Put, Undo } from './write.ts';

export interface Picture {
  readonly bytes: ArrayBuffer;
  readonly type: string;
  readonly width: number;
  readonly height: number;
}

export interface BookOptions {
  readonly name?: string;
  /** Told what happens outside a call: an upgrade that waits, another window that took over, a book that is gone. */
  readonly notice?: (fault: BookFault) => void;
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  readonly newId?: () => string;
  readonly subtle?: Subtle;
  /** Tells other windows; null for none. */
  readonly channel?: Channel | null;
  /** Tells whether another window has the book open; without it nothing is swept. */
  readonly locks?: Locks | undefined;
  /** Where changes go that are on their way when the page closes; null for nowhere. */
  readonly box?: SlipBox | null;
  /** Guards against a log that was torn; left out, where the browser keeps one. */
  readonly isGuarded?: boolean;
  /** Tests only. */
  readonly steps?: readonly MigrationStep[];
}

export interface Book extends Reader, Writer, Settler, Drafts {
  readonly device: string;
  /** Why this book can only be read, or null. */
  readonly readOnly: BookFault | null;
  readonly saving: Pick<Saving, 'now' | 'subscribe' | 'forget'>;
  /** Milliseconds since 1970, as this book tells the time. */
  nowMs(): number;
  newId(): string;
  onChange(listener: (change: BookChange) => void): () => void;
  /** Names a picture by its bytes; a JPEG loses all that tells where and with what it was taken. */
  file(picture: Picture): Promise<Result<NamedFile, BookFault>>;
  /**
   * The page may be about to close: what is on its way into the book is noted at once, and the next
   * start brings it to its end.
   */
  note(): void;
  /** Nothing more is to be written for now, as when the page is hidden; writing all the same is no harm. */
  putAway(): Promise<void>;
  /** Tries again everything that could not be saved. */
  retry(): Promise<void>;
  /** For a screen's own state, as before a camera opens that may end the page; null forgets. */
  remember(key: string, text: string | null): Promise<Result<null, BookFault>>;
  recall(key: string): Promise<Result<string | null, BookFault>>;
  /** Of this book's own modules. */
  readonly ledger: Ledger;
  close(): void;
}

const BIN_DAYS = 30;
const DAY_MS = 86_400_000;
/** What the book keeps: photographs and thumbnails; masks and label maps. */
const TYPES: readonly string[] = ['image/jpeg', 'application/octet-stream'];

export async function openBook(options: BookOptions = {}): Promise<Result<Book, BookFault>> {
  const {
    name = 'studio-book',
    notice = () => {},
    now = Date.now,
    newId = () => crypto.randomUUID(),
    subtle = crypto.subtle,
    channel = openChannel(name),
    locks = globalThis.navigator?.locks,
    box = ownBox(),
    isGuarded = keepsLog(),
    steps = STEPS,
  } = options;
  let leaving = () => {};
  try {
    const trace = createTrace(name, box);
    const plain = await connect(name, steps, notice, () => {
      if (trace.take()) notice({ code: 'book-lost' });
    });
    const guarded = isGuarded && !plain.readOnly ? await guard(plain, name, newId(), locks) : null;
    const connection = guarded ?? plain;
    const device = await nameDevice(connection, newId);
    const leave = () => leaving();
    const slips = createSlips(name, box);
    const parts = { connection, guarded, device, now, newId, subtle, channel, slips, leave };
    const book = createBook(parts);
    book.onChange(trace.leave);
    if (!connection.readOnly) await makeLeft(book, slips);
    // What is due to leave the bin does so in the background: opening never waits for it.
    if (connection.readOnly) return ok(book);
    void book.emptyBin(new Date(now() - BIN_DAYS * DAY_MS).toISOString());
    leaving = keepHouse(name, book.ledger, locks);
    return ok(book);
  } catch (error) {
    channel?.close();
    return fail(error instanceof Refusal ? error.fault : faultOf(error, 'not-opened'));
  }
}

interface Parts {
  readonly connection: Connection;
  readonly guarded: Guarded | null;
  readonly device: string;
  readonly now: () => number;
  readonly newId: () => string;
  readonly subtle: Subtle;
  readonly channel: Channel | null;
  readonly slips: Slips;
  readonly leave: () => void;
}

/** Makes the changes that an earlier page did not bring to their end. */
async function makeLeft(book: Book, slips: Slips): Promise<void> {
  for (const slip of slips.left()) {
    const made = await book.put(slip);
    // What can never be written is given up; a full disk may have room another day.
    const isHopeless = !made.ok && ['bad-record', 'not-found'].includes(made.fault.code);
    if (isHopeless) slips.drop(slip.id);
    if (!made.ok) book.ledger.forget(slip.id);
  }
}

function createBook(parts: Parts): Book {
  const { connection, guarded, device, now, newId, subtle, channel, slips, leave } = parts;
  const ledger = createLedger(connection, channel);
  const { saving } = ledger;
  const writer = createWriter(ledger, slips, device, now, newId);
  return {
    ...createReader(ledger, connection.readOnly !== null),
    ...writer,
    ...createSettler(ledger, device, now),
    ...createDrafts(writer.put, saving),
    device,
    readOnly: connection.readOnly,
    saving: {
      get now() {
        return saving.now;
      },
      subscribe: saving.subscribe,
      forget(key) {
        slips.drop(key);
        ledger.forget(key);
      },
    },
    nowMs: now,
    newId,
    onChange: ledger.onChange,
    async file({ bytes, type, width, height }) {
      const kept = type === 'image/jpeg' ? withoutMetadata(bytes) : bytes;
      if (!kept || !TYPES.includes(type)) return fail({ code: 'not-a-photograph' });
      const id = await sha256(subtle, kept);
      const ref = { file: id, width, height, size: kept.byteLength };
      return ok({ ref, stored: { id, type, bytes: kept } });
    },
    note: slips.write,
    putAway: async () => guarded?.putAway(),
    retry: ledger.retry,
    remember: (key, text) =>
      ledger.write(null, ['meta'], async (transaction) => {
        const meta = transaction.objectStore('meta');
        if (text === null) await meta.delete(`screen ${key}`);
        else await meta.put(text, `screen ${key}`);
        return { value: null, ids: [] };
      }),
    recall: (key) =>
      ledger.read(
        ['meta'],
        async (transaction) => (await transaction.objectStore('meta').get(`screen ${key}`)) ?? null,
      ),
    ledger,
    close() {
      leave();
      channel?.close();
      connection.close();
    },
  };
}

async function nameDevice(connection: Connection, newId: () => string): Promise<string> {
  const known = await connection.run('readonly', ['meta'], (transaction) =>
    transaction.objectStore('meta').get('device'),
  );
  if (known !== undefined || connection.readOnly) return known ?? newId();
  return connection.run('readwrite', ['meta'], async (transaction) => {
    const meta = transaction.objectStore('meta');
    // Another window may have named it since.
    const device = (await meta.get('device')) ?? newId();
    await meta.put(device, 'device');
    return device;
  });
}

const openChannel = (name: string): Channel | null =>
  typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(name);
