/**
 * The studio book in the browser. What a screen calls:
 *
 *   const opened = await openBook({ notice });      // notice(fault): show bookFaultWords(fault)
 *   if (!opened.ok) ...                               // show bookFaultWords(opened.fault)
 *   const book = opened.value;                        // book.readOnly: a fault to show, or null
 *   book.saving.subscribe((line) => ...)              // 'saved' | 'saving' | 'not saved'
 *   book.onChange(({ ids, from }) => ...)             // this or another window wrote: list again
 *
 *   const photo = await book.file({ bytes, type, width, height }); // no EXIF, SHA-256 as name
 *   const saved = await book.put({ kind: 'specimen', body, files: [photo.value], thumbnail });
 *   if (saved.ok) saved.value.entry, await saved.value.undo()
 *   await book.put({ kind: 'harmony', id, over: entry, body: { ...entry.body, name: 'Jay' } });
 *   book.later({ kind, id, over, body })              // while typing; on hide: flush(), note()
 *   await book.list('harmony'), book.get('harmony', id)
 *   await book.photograph(ref.file), book.thumbnail(card)
 *   await book.remove(id) (returns undo), book.bin(), book.restore(id), book.retry()
 *
 * Faults that a painter can act on are returned as a Result, never thrown. `ok` means on disk.
 * `save-specimen.ts` saves a photograph and what was gathered from it, `search-index.ts` searches the
 * summaries, `../transfer` exports and imports copies and writes tables, `persistent-storage.ts`
 * requests persistent storage. Each of these is loaded on demand.
 */
import { fail, ok, type Result } from '../../result.ts';
import { type GuardedConnection, guardConnection, usesDatabaseLog } from '../recovery/log-guard.ts';
import { createLossMarker } from '../recovery/loss-marker.ts';
import {
  createWriteJournal,
  pageStorage,
  type SyncStorage,
  type WriteJournal,
} from '../recovery/pending-writes.ts';
import { BIN_MS } from '../schema/bin-period.ts';
import { type BookFault, faultOf } from '../schema/book-fault.ts';
import { type Subtle, sha256 } from '../schema/digest.ts';
import {
  BookFaultError,
  type Connection,
  connect,
  MIGRATION_STEPS,
  type MigrationStep,
} from './database.ts';
import { createDraftAutosave, type DraftAutosave } from './draft-autosave.ts';
import { type BookChange, type BookGateway, type Channel, createBookGateway } from './gateway.ts';
import { withoutMetadata } from './jpeg-metadata.ts';
import { createReader, type Reader } from './reader.ts';
import { type ConflictResolver, createConflictResolver } from './resolve-conflict.ts';
import type { SaveTracker } from './save-state.ts';
import { type Locks, sweepUnusedMaps } from './unused-maps.ts';
import { createWriter, type NamedFile, type Writer } from './writer.ts';

export type { EntryDraft, NamedFile, Put, Undo } from './writer.ts';

export interface StoredPicture {
  readonly bytes: ArrayBuffer;
  readonly type: string;
  readonly width: number;
  readonly height: number;
}

export interface BookOptions {
  readonly name?: string;
  /**
   * Called with faults that arise outside a call: an upgrade that is blocked, another window that
   * took over, a book that was lost.
   */
  readonly notice?: (fault: BookFault) => void;
  /** Returns milliseconds since 1970. */
  readonly now?: () => number;
  readonly newId?: () => string;
  readonly subtle?: Subtle;
  /** Notifies other windows; null for none. */
  readonly channel?: Channel | null;
  /** Detects other windows that have the book open. Without it, unused maps are never deleted. */
  readonly locks?: Locks | undefined;
  /** Storage for the journal of pending writes and the marker of a lost database; null for none. */
  readonly syncStorage?: SyncStorage | null;
  /**
   * Guards against a truncated log of the browser's database. Default: true in Chromium-based
   * browsers.
   */
  readonly isGuarded?: boolean;
  /** For tests only. */
  readonly steps?: readonly MigrationStep[];
}

export interface Book extends Reader, Writer, ConflictResolver, DraftAutosave {
  readonly device: string;
  /** Why this book is read-only; null when it is not. */
  readonly readOnly: BookFault | null;
  readonly saving: Pick<SaveTracker, 'now' | 'subscribe' | 'forget'>;
  /** Milliseconds since 1970 by this book's clock. */
  nowMs(): number;
  newId(): string;
  onChange(listener: (change: BookChange) => void): () => void;
  /**
   * Names a picture by the SHA-256 of its bytes. Metadata that identifies place or device is
   * removed from a JPEG.
   * @returns the fault `not-a-photograph` for an incomplete JPEG or another media type
   */
  file(picture: StoredPicture): Promise<Result<NamedFile, BookFault>>;
  /**
   * Call when the page may be about to close: writes the journal of pending changes synchronously;
   * the next start completes them.
   */
  journalPendingWrites(): void;
  /**
   * Call when no writes are expected, such as when the page is hidden. Later writes are still
   * allowed.
   */
  clearLogMark(): Promise<void>;
  /** Retries all writes that failed. */
  retry(): Promise<void>;
  /**
   * Stores a screen's state, for instance before a camera opens that may end the page; null deletes
   * it.
   */
  remember(key: string, text: string | null): Promise<Result<null, BookFault>>;
  recall(key: string): Promise<Result<string | null, BookFault>>;
  /** For the book's own modules only. */
  readonly gateway: BookGateway;
  close(): void;
}

/** Media types in the book: photographs and thumbnails; masks and label maps. */
const TYPES: readonly string[] = ['image/jpeg', 'application/octet-stream'];

/**
 * Opens the studio book: migrates it, completes pending changes, and cleans up in the background.
 * @returns a fault such as `no-storage`, `newer-window` or `not-opened` when it cannot be opened
 */
export async function openBook(options: BookOptions = {}): Promise<Result<Book, BookFault>> {
  const {
    name = 'studio-book',
    notice = () => {},
    now = Date.now,
    newId = () => crypto.randomUUID(),
    subtle = crypto.subtle,
    channel = openChannel(name),
    locks = globalThis.navigator?.locks,
    syncStorage: box = pageStorage(),
    isGuarded = usesDatabaseLog(),
    steps = MIGRATION_STEPS,
  } = options;
  let leaving = () => {};
  try {
    const trace = createLossMarker(name, box);
    const plain = await connect(name, steps, notice, () => {
      if (trace.take()) notice({ code: 'book-lost' });
    });
    const guarded =
      isGuarded && !plain.readOnly ? await guardConnection(plain, name, newId(), locks) : null;
    const connection = guarded ?? plain;
    const device = await nameDevice(connection, newId);
    const leave = () => leaving();
    const slips = createWriteJournal(name, box);
    const parts = { connection, guarded, device, now, newId, subtle, channel, slips, leave };
    const book = createBook(parts);
    book.onChange(trace.leave);
    if (!connection.readOnly) await completePendingWrites(book, slips);
    // Old entries leave the bin in the background: opening never waits for it.
    if (connection.readOnly) return ok(book);
    void book.emptyBin(new Date(now() - BIN_MS).toISOString());
    leaving = sweepUnusedMaps(name, book.gateway, locks);
    return ok(book);
  } catch (error) {
    channel?.close();
    return fail(error instanceof BookFaultError ? error.fault : faultOf(error, 'not-opened'));
  }
}

interface Parts {
  readonly connection: Connection;
  readonly guarded: GuardedConnection | null;
  readonly device: string;
  readonly now: () => number;
  readonly newId: () => string;
  readonly subtle: Subtle;
  readonly channel: Channel | null;
  readonly slips: WriteJournal;
  readonly leave: () => void;
}

/** Completes the pending changes that an earlier page recorded in the journal. */
async function completePendingWrites(book: Book, slips: WriteJournal): Promise<void> {
  for (const slip of slips.left()) {
    const made = await book.put(slip);
    // Discard a change that can never be written; after a full disk it may succeed later.
    const isHopeless = !made.ok && ['bad-record', 'not-found'].includes(made.fault.code);
    if (isHopeless) slips.drop(slip.id);
    if (!made.ok) book.gateway.forget(slip.id);
  }
}

function createBook(parts: Parts): Book {
  const { connection, guarded, device, now, newId, subtle, channel, slips, leave } = parts;
  const ledger = createBookGateway(connection, channel);
  const { saving } = ledger;
  const writer = createWriter(ledger, slips, device, now, newId);
  return {
    ...createReader(ledger, connection.readOnly !== null),
    ...writer,
    ...createConflictResolver(ledger, device, now),
    ...createDraftAutosave(writer.put, saving),
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
    journalPendingWrites: slips.write,
    clearLogMark: async () => guarded?.clearLogMark(),
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
    gateway: ledger,
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
    // Another window may have named it meanwhile.
    const device = (await meta.get('device')) ?? newId();
    await meta.put(device, 'device');
    return device;
  });
}

const openChannel = (name: string): Channel | null =>
  typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(name);
