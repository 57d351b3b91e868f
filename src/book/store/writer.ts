import { fail, ok, type Result } from '../../result.ts';
import { toConflictCopy } from '../merge/merge-books.ts';
import { deleted, restored } from '../merge/next-version.ts';
import type { WriteJournal } from '../recovery/pending-writes.ts';
import type { BookFault } from '../schema/book-fault.ts';
import type { FileRef } from '../schema/fields.ts';
import { msOf } from '../schema/hybrid-clock.ts';
import {
  type AnyRecord,
  type Bodies,
  type Entry,
  type Kind,
  readRecord,
} from '../schema/record.ts';
import { BookFaultError, type StoredFile, type TableName } from './database.ts';
import {
  issueVersionMetadata,
  mergeFields,
  purgeEntries,
  readCurrentEntry,
  storeEntry,
} from './entry-transactions.ts';
import type { BookGateway } from './gateway.ts';

/** A file with its content-derived id. */
export interface NamedFile {
  readonly ref: FileRef;
  readonly stored: StoredFile;
}
export interface EntryDraft<K extends Kind> {
  readonly kind: K;
  readonly body: Bodies[K];
  /** Id of an entry to change, or one created beforehand with `newId`; absent for a new entry. */
  readonly id?: string;
  /**
   * The version that the screen was showing; changes made by another window since then are merged.
   */
  readonly over?: Entry<K>;
  /** Written by the program, not the painter: an entry in the bin stays there. */
  readonly quiet?: boolean;
  readonly files?: readonly NamedFile[];
  readonly thumbnail?: { readonly of: string; readonly bytes: ArrayBuffer; readonly type: string };
}
export type Undo = () => Promise<Result<null, BookFault>>;
export interface Put<K extends Kind> {
  readonly entry: Entry<K>;
  readonly undo: Undo;
  /** Id of the conflict copy that preserves another window's version; null when there is none. */
  readonly conflictCopyId: string | null;
}

export interface Writer {
  put<K extends Kind>(draft: EntryDraft<K>): Promise<Result<Put<K>, BookFault>>;
  remove(id: string): Promise<Result<{ readonly undo: Undo }, BookFault>>;
  restore(id: string): Promise<Result<null, BookFault>>;
  /**
   * Purges everything deleted before this moment (ISO date and time).
   * @returns the number of purged entries
   */
  emptyBin(before: string): Promise<Result<number, BookFault>>;
}

const ALL: readonly TableName[] = ['records', 'cards', 'files', 'thumbnails', 'meta'];
const MARKED: readonly TableName[] = ['records', 'cards', 'files', 'meta'];

/** Write access to single entries. */
export function createWriter(
  ledger: BookGateway,
  slips: WriteJournal,
  device: string,
  now: () => number,
  newId: () => string,
): Writer {
  /** Clocks of versions that this window wrote; overwriting one of them is no conflict. */
  const own = new Set<string>();

  async function put<K extends Kind>(draft: EntryDraft<K>): Promise<Result<Put<K>, BookFault>> {
    const { kind, over, thumbnail } = draft;
    const id = draft.id ?? over?.id ?? newId();
    // The screen may continue to change its own object; functions and signals cannot be stored.
    const copied = copyOf(draft.body);
    if (!copied.ok) return copied;
    const { quiet, files = [] } = draft;
    // The journal does not store pictures, and an entry that needs them cannot be written without
    // them.
    const noted =
      files.length > 0
        ? slips.waiting(id)
        : slips.begin({
            kind,
            id,
            body: copied.value,
            ...(over ? { over: over as Entry } : {}),
            ...(quiet ? { quiet } : {}),
          });
    return ledger.write(
      id,
      ALL,
      async (transaction) => {
        const existing = await transaction.objectStore('records').getKey(id);
        const before = existing === undefined ? null : await readCurrentEntry(transaction, id);
        if (before && before.kind !== kind)
          throw new BookFaultError({ code: 'bad-record', where: 'kind' });
        for (const { stored } of files) await transaction.objectStore('files').put(stored);
        if (thumbnail) {
          const { of, type, bytes } = thumbnail;
          await transaction.objectStore('thumbnails').put({ id: of, type, bytes });
        }
        let body = copied.value;
        let conflictCopyId: string | null = null;
        if (before && over && before.clock !== over.clock) {
          const woven = mergeFields<object>(over.body, before.body, body);
          body = woven.body as Bodies[K];
          if (woven.clash && !own.has(before.clock)) {
            // New metadata, because this device's next version of the entry would otherwise
            // supersede this one.
            const marks = await issueVersionMetadata(transaction, device, now(), [before]);
            const copy = { ...toConflictCopy(before), ...marks };
            conflictCopyId = copy.id;
            await storeEntry(transaction, copy);
          }
        }
        const known = [before, over].filter((version) => version != null) as AnyRecord[];
        const marks = await issueVersionMetadata(transaction, device, now(), known);
        own.add(marks.clock);
        const { deletedAt, ...kept } = before ?? { id, kind, created: marks.changed };
        const binned = draft.quiet && deletedAt !== undefined ? { deletedAt } : {};
        const entry = { ...kept, ...marks, ...binned, body } as Entry<K>;
        await storeEntry(transaction, entry as AnyRecord);
        const undo: Undo = async () => {
          if (!before) return nothing(await remove(id));
          return nothing(await put({ kind, id, over: entry, body: before.body as Bodies[K] }));
        };
        const ids = conflictCopyId === null ? [id] : [id, conflictCopyId];
        return { value: { entry, undo, conflictCopyId }, ids };
      },
      noted,
    );
  }

  /** Moves an entry to the bin or back. */
  const bin = (id: string, away: boolean): Promise<Result<null, BookFault>> => {
    // A write that failed before must not be repeated after this.
    const noted = slips.waiting(id);
    return ledger.write(
      id,
      MARKED,
      async (transaction) => {
        const before = await readCurrentEntry(transaction, id);
        if ((before.deletedAt !== undefined) === away) return { value: null, ids: [] };
        const marks = await issueVersionMetadata(transaction, device, now(), [before]);
        own.add(marks.clock);
        await storeEntry(transaction, away ? deleted(before, marks) : restored(before, marks));
        return { value: null, ids: [id] };
      },
      noted,
    );
  };

  async function remove(id: string): Promise<Result<{ readonly undo: Undo }, BookFault>> {
    const removed = await bin(id, true);
    return removed.ok ? ok({ undo: () => bin(id, false) }) : removed;
  }

  return {
    put,
    remove,
    restore: (id) => bin(id, false),
    emptyBin: (before) =>
      ledger.write(null, ALL, async (transaction) => {
        const index = transaction.objectStore('cards').index('deletedAt');
        const ids: string[] = [];
        for (const id of await index.getAllKeys(IDBKeyRange.upperBound(before))) {
          const raw = await transaction.objectStore('records').get(id);
          // Unreadable entries stay: importing a copy may repair them.
          const record = readRecord(raw);
          // Check the logical clock too: a wall clock that was wrong on that day must not shorten
          // the time in the bin.
          if (record.ok && new Date(msOf(record.value.clock)).toISOString() <= before) ids.push(id);
        }
        await purgeEntries(transaction, ids);
        return { value: ids.length, ids };
      }),
  };
}

const nothing = (result: Result<unknown, BookFault>): Result<null, BookFault> =>
  result.ok ? ok(null) : result;

function copyOf<T>(body: T): Result<T, BookFault> {
  try {
    return ok(structuredClone(body));
  } catch {
    return fail({ code: 'bad-record', where: 'body' });
  }
}
