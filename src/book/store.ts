/**
 * The studio book in the browser. What a screen calls:
 *
 *   const opened = await openBook({ notice });          // notice(fault): show bookFaultWords(fault)
 *   if (!opened.ok) ...                                 // say bookFaultWords(opened.fault)
 *   const book = opened.value;                          // book.readOnly: a fault to show, or null
 *   book.saving.subscribe((line) => ...)                // 'saved' | 'saving' | 'not saved' with fault
 *   book.onChange(({ ids, from }) => ...)               // this window or another one wrote: list again
 *
 *   const photo = await book.file({ bytes, type, width, height });        // names it by its SHA-256
 *   const saved = await book.put({ kind: 'specimen', body: specimenOf(photo.ref, today), files: [photo], thumbnail });
 *   if (saved.ok) saved.value.entry, await saved.value.undo()
 *   await book.put({ kind: 'harmony', id, over: entry, body: { ...entry.body, name: 'Jay' } });   // rename
 *   await book.list('harmony'), book.get('harmony', id), book.photograph(ref.file), book.thumbnail(card)
 *   await book.remove(id) (answers with undo), book.bin(), book.restore(id), book.retry()
 *
 * Nothing throws for what a painter can act on: every answer is a Result. `ok` means on disk.
 * `keep.ts` has the two steps that screens take most: keeping a photograph and what was gathered.
 */
import { fail, ok, type Result } from '../result.ts';
import { type Card, cardOf } from './card.ts';
import { START } from './clock.ts';
import {
  type Connection,
  connect,
  type MigrationStep,
  Refusal,
  STEPS,
  type StoredFile,
  type Table,
  type Transaction,
} from './database.ts';
import { type Subtle, sha256 } from './digest.ts';
import { type BookFault, faultOf } from './faults.ts';
import type { FileRef } from './fields.ts';
import { beside, sameValue } from './merge.ts';
import {
  type AnyRecord,
  type Bodies,
  type Entry,
  filesOf,
  hasBody,
  type Kind,
  readRecord,
} from './record.ts';
import { createSaving, type Saving } from './saving.ts';
import { deleted, nextMarks, purged, restored } from './version.ts';

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
export interface BookChange {
  readonly ids: readonly string[];
  readonly from: 'this window' | 'another window';
}
export interface Channel {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent) => void) | null;
  close(): void;
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
  /** Tests only. */
  readonly steps?: readonly MigrationStep[];
}

export interface Book {
  readonly device: string;
  /** Why this book can only be read, or null. */
  readonly readOnly: BookFault | null;
  readonly saving: Pick<Saving, 'now' | 'subscribe' | 'forget'>;
  newId(): string;
  onChange(listener: (change: BookChange) => void): () => void;
  file(picture: Picture): Promise<NamedFile>;
  put<K extends Kind>(draft: Draft<K>): Promise<Result<Put<K>, BookFault>>;
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
  connection: Connection;
  close(): void;
}

const BIN_DAYS = 30;
const DAY_MS = 86_400_000;
const ALL: readonly Table[] = ['records', 'cards', 'files', 'thumbnails', 'meta'];
const WRITTEN: readonly Table[] = ['records', 'cards', 'meta'];

export async function openBook(options: BookOptions = {}): Promise<Result<Book, BookFault>> {
  const {
    name = 'studio-book',
    notice = () => {},
    now = Date.now,
    newId = () => crypto.randomUUID(),
    subtle = crypto.subtle,
    channel = openChannel(name),
    steps = STEPS,
  } = options;
  try {
    const connection = await connect(name, steps, notice);
    const device = await nameDevice(connection, newId);
    const book = createBook({ connection, device, now, newId, subtle, channel });
    // What is due to leave the bin does so in the background: opening never waits for it.
    if (!connection.readOnly) void book.emptyBin(iso(now() - BIN_DAYS * DAY_MS));
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
}

function createBook({ connection, device, now, newId, subtle, channel }: Parts): Book {
  const saving = createSaving();
  const listeners = new Set<(change: BookChange) => void>();
  const again = new Map<string, () => Promise<unknown>>();

  const tell = (change: BookChange) => {
    for (const listener of [...listeners]) listener(change);
  };
  if (channel)
    channel.onmessage = ({ data }) => {
      if (Array.isArray(data)) tell({ ids: data.map(String), from: 'another window' });
    };

  /**
   * Writes under one name: the line says "saving" until it is on disk or has failed. Without a name
   * it is housekeeping, which nobody waits for.
   */
  async function write<T>(
    key: string | null,
    tables: readonly Table[],
    work: (transaction: Transaction<'readwrite'>) => Promise<{ value: T; ids: readonly string[] }>,
  ): Promise<Result<T, BookFault>> {
    const mark = key === null ? null : saving.begin(key);
    try {
      const { value, ids } = await connection.run('readwrite', tables, work);
      if (key !== null) again.delete(key);
      mark?.durable();
      if (ids.length > 0) {
        tell({ ids, from: 'this window' });
        channel?.postMessage(ids);
      }
      return ok(value);
    } catch (error) {
      const fault = error instanceof Refusal ? error.fault : faultOf(error, 'not-written');
      if (key !== null && fault.code !== 'not-found')
        again.set(key, () => write(key, tables, work));
      if (fault.code === 'not-found') mark?.dropped();
      else mark?.failed(fault);
      return fail(fault);
    }
  }

  async function read<T>(
    tables: readonly Table[],
    work: (transaction: Transaction<'readonly'>) => Promise<T>,
  ): Promise<Result<T, BookFault>> {
    try {
      return ok(await connection.run('readonly', tables, work));
    } catch (error) {
      return fail(error instanceof Refusal ? error.fault : faultOf(error, 'not-opened'));
    }
  }

  /** A new version of an entry, after all that `known` says was known. */
  async function stamp(transaction: Transaction<'readwrite'>, known: readonly AnyRecord[]) {
    const meta = transaction.objectStore('meta');
    const marks = nextMarks(device, (await meta.get('clock')) ?? START, now(), known);
    await meta.put(marks.clock, 'clock');
    return marks;
  }

  async function store(transaction: Transaction<'readwrite'>, record: AnyRecord) {
    const checked = readRecord(record);
    if (!checked.ok) throw new Refusal(checked.fault);
    await transaction.objectStore('records').put(record);
    const card = cardOf(record);
    if (card) await transaction.objectStore('cards').put(card);
    else await transaction.objectStore('cards').delete(record.id);
  }

  async function current(transaction: Transaction<'readwrite'>, id: string): Promise<Entry> {
    const raw = await transaction.objectStore('records').get(id);
    if (!raw) throw new Refusal({ code: 'not-found' });
    const found = readRecord(raw);
    if (!found.ok) throw new Refusal(found.fault);
    if (!hasBody(found.value)) throw new Refusal({ code: 'not-found' });
    return found.value;
  }

  async function put<K extends Kind>(draft: Draft<K>): Promise<Result<Put<K>, BookFault>> {
    const id = draft.id ?? draft.over?.id ?? newId();
    // The screen may go on changing its own object; functions and signals cannot be stored.
    const copied = copyOf(draft.body);
    if (!copied.ok) return copied;
    const body = copied.value;
    const files = (draft.files ?? []).map(({ stored }) => stored);
    let written = '';
    return write(id, ALL, async (transaction) => {
      const records = transaction.objectStore('records');
      const existing = await records.get(id);
      const before = existing ? await current(transaction, id) : null;
      if (before && before.kind !== draft.kind)
        throw new Refusal({ code: 'bad-record', where: 'kind' });
      for (const file of files) await transaction.objectStore('files').put(file);
      if (draft.thumbnail) {
        const { of, type, bytes } = draft.thumbnail;
        await transaction.objectStore('thumbnails').put({ id: of, type, bytes });
      }
      let keptBeside: string | null = null;
      const { over } = draft;
      const overtaken = before && over && before.clock !== over.clock && before.clock !== written;
      if (before && overtaken && !sameValue(before.body, over.body)) {
        // Stamped anew: this device's next version of the entry would seem to know this one.
        const copy = { ...beside(before), ...(await stamp(transaction, [before])) };
        keptBeside = copy.id;
        await store(transaction, copy);
      }
      const known = [before, over].filter((version) => version != null) as AnyRecord[];
      const marks = await stamp(transaction, known);
      written = marks.clock;
      const { deletedAt: _, ...kept } = before ?? { id, kind: draft.kind, created: iso(now()) };
      const entry = { ...kept, ...marks, body } as Entry<K>;
      const record = entry as AnyRecord;
      await store(transaction, record);
      for (const { file } of filesOf(record))
        if ((await transaction.objectStore('files').getKey(file)) === undefined)
          throw new Refusal({ code: 'bad-record', where: `file ${file}` });
      const undo: Undo = async () => {
        if (!before) {
          const removed = await remove(id);
          return removed.ok ? ok(null) : removed;
        }
        const body = before.body as Bodies[K];
        const back = await put({ kind: draft.kind, id, over: entry, body });
        return back.ok ? ok(null) : back;
      };
      const ids = keptBeside === null ? [id] : [id, keptBeside];
      return { value: { entry, undo, keptBeside }, ids };
    });
  }

  /** Puts into the bin, or takes back. */
  function mark(id: string, isDeleted: boolean): Promise<Result<null, BookFault>> {
    return write(id, WRITTEN, async (transaction) => {
      const before = await current(transaction, id);
      if ((before.deletedAt !== undefined) === isDeleted) return { value: null, ids: [] };
      const marks = await stamp(transaction, [before]);
      await store(transaction, isDeleted ? deleted(before, marks) : restored(before, marks));
      return { value: null, ids: [id] };
    });
  }

  async function remove(id: string): Promise<Result<{ readonly undo: Undo }, BookFault>> {
    const removed = await mark(id, true);
    return removed.ok ? ok({ undo: () => mark(id, false) }) : removed;
  }

  function emptyBin(before: string): Promise<Result<number, BookFault>> {
    return write(null, ALL, async (transaction) => {
      const cards = transaction.objectStore('cards');
      const due = (await cards.getAll()).filter((card) => (card.deletedAt ?? '~') < before);
      const loose = new Set<string>();
      for (const { id } of due) {
        const record = await current(transaction, id);
        for (const { file } of filesOf(record)) loose.add(file);
        await store(transaction, purged(record));
      }
      for (const file of loose) {
        if ((await cards.index('files').count(file)) > 0) continue;
        await transaction.objectStore('files').delete(file);
        await transaction.objectStore('thumbnails').delete(file);
      }
      return { value: due.length, ids: due.map(({ id }) => id) };
    });
  }

  const cardsOf = (kind?: Kind) =>
    read(['cards'], (transaction) => {
      const cards = transaction.objectStore('cards');
      return kind === undefined ? cards.getAll() : cards.index('kind').getAll(kind);
    });

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
      forget(key) {
        again.delete(key);
        saving.forget(key);
      },
    },
    newId,
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async file({ bytes, type, width, height }) {
      const id = await sha256(subtle, bytes);
      const ref = { file: id, width, height, size: bytes.byteLength };
      return { ref, stored: { id, type, bytes } };
    },
    put,
    async get<K extends Kind>(kind: K, id: string) {
      const raw = await read(['records'], (transaction) =>
        transaction.objectStore('records').get(id),
      );
      if (!raw.ok) return raw;
      if (!raw.value) return fail({ code: 'not-found' });
      const found = readRecord(raw.value);
      if (!found.ok) return found;
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
      const deleted = cards.value.filter(({ deletedAt }) => deletedAt !== undefined);
      return ok(deleted.sort((x, y) => (x.deletedAt! < y.deletedAt! ? 1 : -1)));
    },
    remove,
    restore: (id) => mark(id, false),
    emptyBin,
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
    async retry() {
      for (const attempt of [...again.values()]) await attempt();
    },
    connection,
    close() {
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

function copyOf<T>(body: T): Result<T, BookFault> {
  try {
    return ok(structuredClone(body));
  } catch {
    return fail({ code: 'bad-record', where: 'body' });
  }
}

const iso = (ms: number): string => new Date(ms).toISOString();
