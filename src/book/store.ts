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
 *   book.later({ kind, id, over, body })               // while typing; flushOnHide(document, book) once
 *   await book.list('harmony'), book.get('harmony', id), book.photograph(ref.file), book.thumbnail(card)
 *   await book.remove(id) (answers with undo), book.bin(), book.restore(id), book.retry()
 *
 * Nothing throws for what a painter can act on: every answer is a Result. `ok` means on disk.
 * `keep.ts` has the two steps that screens take most: keeping a photograph and what was gathered.
 */
import { fail, ok, type Result } from '../result.ts';
import { type Card, cardOf } from './card.ts';
import { msOf } from './clock.ts';
import {
  type Connection,
  connect,
  type MigrationStep,
  Refusal,
  STEPS,
  type StoredFile,
  type Table,
} from './database.ts';
import { type Subtle, sha256 } from './digest.ts';
import { createDrafts } from './drafts.ts';
import { clear, current, stamp, store, weave } from './entries.ts';
import { type BookFault, faultOf } from './faults.ts';
import type { FileRef } from './fields.ts';
import { keepHouse, type Locks } from './house.ts';
import { withoutMetadata } from './jpeg.ts';
import { type BookChange, type Channel, createLedger, type Ledger } from './ledger.ts';
import { beside } from './merge.ts';
import {
  type AnyRecord,
  type Bodies,
  type Entry,
  hasBody,
  type Kind,
  readRecord,
} from './record.ts';
import type { Saving } from './saving.ts';
import { deleted, restored } from './version.ts';

export interface Picture {
  readonly bytes: ArrayBuffer;
  readonly type: string;
  readonly width: number;
  readonly height: number;
}
export interface NamedFile {
  readonly ref: FileRef;
  readonly stored: StoredFile;
}
export interface Draft<K extends Kind> {
  readonly kind: K;
  readonly body: Bodies[K];
  /** Of an entry to change, or one chosen beforehand with `newId`; absent for a new one. */
  readonly id?: string;
  /** The version that the screen was showing: if another window has changed it since, both are kept. */
  readonly over?: Entry<K>;
  /** Added by the program, not the painter: an entry in the bin stays there. */
  readonly quiet?: boolean;
  readonly files?: readonly NamedFile[];
  readonly thumbnail?: { readonly of: string; readonly bytes: ArrayBuffer; readonly type: string };
}
export type Undo = () => Promise<Result<null, BookFault>>;
export interface Put<K extends Kind> {
  readonly entry: Entry<K>;
  readonly undo: Undo;
  /** The other window's version, kept beside this one. */
  readonly keptBeside: string | null;
}
export interface BookOptions {
  readonly name?: string;
  /** Told what happens outside a call: an upgrade that waits, another window that took over. */
  readonly notice?: (fault: BookFault) => void;
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  readonly newId?: () => string;
  readonly subtle?: Subtle;
  /** Tells other windows; null for none. */
  readonly channel?: Channel | null;
  /** Tells whether another window has the book open; without it nothing is swept. */
  readonly locks?: Locks | undefined;
  /** Tests only. */
  readonly steps?: readonly MigrationStep[];
}

export interface Book {
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
  put<K extends Kind>(draft: Draft<K>): Promise<Result<Put<K>, BookFault>>;
  /** What is being typed: saved within a second, or by `flush` when the page hides. */
  later<K extends Kind>(draft: Draft<K> & { readonly id: string }): void;
  flush(): Promise<Result<null, BookFault>>;
  get<K extends Kind>(kind: K, id: string): Promise<Result<Entry<K>, BookFault>>;
  /** Cards of one kind or all, newest change first, without what is in the bin. */
  list(kind?: Kind): Promise<Result<readonly Card[], BookFault>>;
  /** Cards of what was deleted, last deleted first. */
  bin(): Promise<Result<readonly Card[], BookFault>>;
  remove(id: string): Promise<Result<{ readonly undo: Undo }, BookFault>>;
  restore(id: string): Promise<Result<null, BookFault>>;
  /** Takes what was deleted before this moment (ISO) out of the bin for good; answers how many. */
  emptyBin(before: string): Promise<Result<number, BookFault>>;
  photograph(file: string): Promise<Result<StoredFile, BookFault>>;
  /** Null where there is none. */
  thumbnail(card: Card): Promise<Result<StoredFile | null, BookFault>>;
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
const ALL: readonly Table[] = ['records', 'cards', 'files', 'thumbnails', 'meta'];
const WRITTEN: readonly Table[] = ['records', 'cards', 'files', 'meta'];
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
    steps = STEPS,
  } = options;
  let leave = () => {};
  try {
    const connection = await connect(name, steps, notice);
    const device = await nameDevice(connection, newId);
    const book = createBook({
      ...{ connection, device, now, newId, subtle, channel },
      leave: () => leave(),
    });
    // What is due to leave the bin does so in the background: opening never waits for it.
    if (connection.readOnly) return ok(book);
    void book.emptyBin(iso(now() - BIN_DAYS * DAY_MS));
    leave = keepHouse(name, book.ledger, locks);
    return ok(book);
  } catch (error) {
    channel?.close();
    return fail(error instanceof Refusal ? error.fault : faultOf(error, 'not-opened'));
  }
}

interface Parts {
  readonly connection: Connection;
  readonly device: string;
  readonly now: () => number;
  readonly newId: () => string;
  readonly subtle: Subtle;
  readonly channel: Channel | null;
  readonly leave: () => void;
}

function createBook({ connection, device, now, newId, subtle, channel, leave }: Parts): Book {
  const ledger = createLedger(connection, channel);
  const { read, write, saving } = ledger;
  /** Versions that this window wrote: they never surprise it. */
  const own = new Set<string>();

  async function put<K extends Kind>(draft: Draft<K>): Promise<Result<Put<K>, BookFault>> {
    const { kind, over, thumbnail } = draft;
    const id = draft.id ?? over?.id ?? newId();
    // The screen may go on changing its own object; functions and signals cannot be stored.
    const copied = copyOf(draft.body);
    if (!copied.ok) return copied;
    return write(id, ALL, async (transaction) => {
      const existing = await transaction.objectStore('records').getKey(id);
      const before = existing === undefined ? null : await current(transaction, id);
      if (before && before.kind !== kind) throw new Refusal({ code: 'bad-record', where: 'kind' });
      for (const { stored } of draft.files ?? [])
        await transaction.objectStore('files').put(stored);
      if (thumbnail) {
        const { of, type, bytes } = thumbnail;
        await transaction.objectStore('thumbnails').put({ id: of, type, bytes });
      }
      let body = copied.value;
      let keptBeside: string | null = null;
      if (before && over && before.clock !== over.clock) {
        const woven = weave<object>(over.body, before.body, body);
        body = woven.body as Bodies[K];
        if (woven.clash && !own.has(before.clock)) {
          // Stamped anew: this device's next version of the entry would seem to know this one.
          const marks = await stamp(transaction, device, now(), [before]);
          const copy = { ...beside(before), ...marks };
          keptBeside = copy.id;
          await store(transaction, copy);
        }
      }
      const known = [before, over].filter((version) => version != null) as AnyRecord[];
      const marks = await stamp(transaction, device, now(), known);
      own.add(marks.clock);
      const { deletedAt, ...kept } = before ?? { id, kind, created: marks.changed };
      const binned = draft.quiet && deletedAt !== undefined ? { deletedAt } : {};
      const entry = { ...kept, ...marks, ...binned, body } as Entry<K>;
      await store(transaction, entry as AnyRecord);
      const undo: Undo = async () => {
        if (!before) return nothing(await remove(id));
        return nothing(await put({ kind, id, over: entry, body: before.body as Bodies[K] }));
      };
      const ids = keptBeside === null ? [id] : [id, keptBeside];
      return { value: { entry, undo, keptBeside }, ids };
    });
  }

  /** Puts into the bin, or takes back. */
  const bin = (id: string, away: boolean): Promise<Result<null, BookFault>> =>
    write(id, WRITTEN, async (transaction) => {
      const before = await current(transaction, id);
      if ((before.deletedAt !== undefined) === away) return { value: null, ids: [] };
      const marks = await stamp(transaction, device, now(), [before]);
      own.add(marks.clock);
      await store(transaction, away ? deleted(before, marks) : restored(before, marks));
      return { value: null, ids: [id] };
    });

  async function remove(id: string): Promise<Result<{ readonly undo: Undo }, BookFault>> {
    const removed = await bin(id, true);
    return removed.ok ? ok({ undo: () => bin(id, false) }) : removed;
  }

  /** A newer book may keep cards of another form: there they are made from what can be read. */
  const cardsOf = (kind?: Kind): Promise<Result<Card[], BookFault>> =>
    connection.readOnly
      ? read(['records'], async (transaction) => {
          const records = await transaction.objectStore('records').getAll();
          return records.flatMap((raw) => {
            const record = readRecord(raw);
            const card = record.ok ? cardOf(record.value) : null;
            return card && (kind === undefined || card.kind === kind) ? [card] : [];
          });
        })
      : read(['cards'], (transaction) => {
          const cards = transaction.objectStore('cards');
          return kind === undefined ? cards.getAll() : cards.index('kind').getAll(kind);
        });

  const drafts = createDrafts(put, saving);
  return {
    device,
    get readOnly() {
      return connection.readOnly;
    },
    saving: {
      get now() {
        return saving.now;
      },
      subscribe: saving.subscribe,
      forget: ledger.forget,
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
    put,
    later: drafts.later,
    flush: drafts.flush,
    async get<K extends Kind>(kind: K, id: string) {
      const raw = await read(['records'], (transaction) =>
        transaction.objectStore('records').get(id),
      );
      if (!raw.ok) return raw;
      if (!raw.value) return fail({ code: 'not-found' });
      const found = readRecord(raw.value);
      if (!found.ok) return found.fault.code === 'newer-record' ? found : fail({ code: 'damaged' });
      if (found.value.kind !== kind || !hasBody(found.value)) return fail({ code: 'not-found' });
      return ok(found.value as Entry<K>);
    },
    async list(kind) {
      const cards = await cardsOf(kind);
      if (!cards.ok) return cards;
      const kept = cards.value.filter(({ deletedAt }) => deletedAt === undefined);
      return ok(kept.sort((x, y) => (x.changed < y.changed ? 1 : -1)));
    },
    async bin() {
      const cards = await cardsOf();
      if (!cards.ok) return cards;
      const away = cards.value.filter(({ deletedAt }) => deletedAt !== undefined);
      return ok(away.sort((x, y) => (x.deletedAt! < y.deletedAt! ? 1 : -1)));
    },
    remove,
    restore: (id) => bin(id, false),
    emptyBin: (before) =>
      write(null, ALL, async (transaction) => {
        const index = transaction.objectStore('cards').index('deletedAt');
        const ids: string[] = [];
        for (const id of await index.getAllKeys(IDBKeyRange.upperBound(before))) {
          // A wall clock that was wrong that day must not cut the days in the bin short.
          const { clock } = await current(transaction, id);
          if (iso(msOf(clock)) <= before) ids.push(id);
        }
        await clear(transaction, ids);
        return { value: ids.length, ids };
      }),
    async photograph(file) {
      const found = await read(['files'], (transaction) =>
        transaction.objectStore('files').get(file),
      );
      if (!found.ok) return found;
      return found.value ? ok(found.value) : fail({ code: 'not-found' });
    },
    thumbnail: (card) =>
      read(['cards', 'thumbnails'], async (transaction) => {
        const { picture } = card.specimen
          ? ((await transaction.objectStore('cards').get(card.specimen)) ?? card)
          : card;
        if (picture === undefined) return null;
        return (await transaction.objectStore('thumbnails').get(picture)) ?? null;
      }),
    remember: (key, text) =>
      write(null, ['meta'], async (transaction) => {
        const meta = transaction.objectStore('meta');
        if (text === null) await meta.delete(`screen ${key}`);
        else await meta.put(text, `screen ${key}`);
        return { value: null, ids: [] };
      }),
    recall: (key) =>
      read(
        ['meta'],
        async (transaction) => (await transaction.objectStore('meta').get(`screen ${key}`)) ?? null,
      ),
    retry: ledger.retry,
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

const nothing = (result: Result<unknown, BookFault>): Result<null, BookFault> =>
  result.ok ? ok(null) : result;

function copyOf<T>(body: T): Result<T, BookFault> {
  try {
    return ok(structuredClone(body));
  } catch {
    return fail({ code: 'bad-record', where: 'body' });
  }
}

const iso = (ms: number): string => new Date(ms).toISOString();
