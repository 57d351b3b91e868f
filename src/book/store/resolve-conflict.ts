import { ok, type Result } from '../../result.ts';
import { deleted } from '../merge/next-version.ts';
import type { BookFault } from '../schema/book-fault.ts';
import { type AnyRecord, type Entry, hasBody } from '../schema/record.ts';
import type { TableName } from './database.ts';
import {
  issueVersionMetadata,
  mergeFields,
  readCurrentEntry,
  storeEntry,
} from './entry-transactions.ts';
import type { BookGateway, WriteOutcome } from './gateway.ts';
import type { Undo } from './writer.ts';

/** Which versions stay: the current one, the conflict copy, or both. */
export type ConflictChoice = 'the one in force' | 'the one beside' | 'both';

export interface ConflictResolver {
  /**
   * Resolves a conflict. A version that does not stay goes to the bin unchanged. The one that stays
   * gets the entry's own id, so that links to the entry remain valid. With both kept, they are two
   * separate entries from then on, also after merges with other books.
   * @param of     id of the entry
   * @param beside id of its conflict copy
   * @returns the fault `not-found` when one of the two no longer exists
   */
  resolveConflict(
    of: string,
    beside: string,
    kept: ConflictChoice,
  ): Promise<Result<{ readonly undo: Undo }, BookFault>>;
}

/** Result of a write, with the entries as written. */
interface Done<T> {
  readonly value: T;
  readonly made: readonly AnyRecord[];
}

const TABLES: readonly TableName[] = ['records', 'cards', 'files', 'meta'];

/**
 * Creates the resolver of conflicts.
 * @param now returns milliseconds since 1970
 */
export function createConflictResolver(
  ledger: BookGateway,
  device: string,
  now: () => number,
): ConflictResolver {
  /** Writes new versions of entries, each made in knowledge of the current version. */
  const write = <T>(
    ids: readonly string[],
    change: (found: readonly Entry[]) => { readonly next: readonly Entry[]; readonly value: T },
  ): Promise<Result<Done<T>, BookFault>> =>
    ledger.write(ids[0]!, TABLES, async (transaction): Promise<WriteOutcome<Done<T>>> => {
      const found: Entry[] = [];
      for (const id of ids) found.push(await readCurrentEntry(transaction, id));
      const { next, value } = change(found);
      const made: AnyRecord[] = [];
      for (const entry of next) {
        const known = found.filter(({ id }) => id === entry.id);
        const marks = await issueVersionMetadata(transaction, device, now(), known);
        const record = { ...entry, ...marks };
        made.push((entry.deletedAt === undefined ? record : deleted(record, marks)) as AnyRecord);
        await storeEntry(transaction, made.at(-1)!);
      }
      return { value: { value, made }, ids };
    });

  return {
    async resolveConflict(of, beside, kept) {
      const settled = await write([of, beside], (found) => {
        const [entry, other] = found as [Entry, Entry];
        const away = { ...other, deletedAt: 'now' } as Entry;
        if (kept === 'the one in force') return { next: [away], value: found };
        if (kept === 'the one beside') {
          const next = [
            { ...entry, body: other.body },
            { ...away, body: entry.body },
          ] as readonly Entry[];
          return { next, value: found };
        }
        const conflict = other.conflict && { ...other.conflict, settled: true as const };
        return { next: [{ ...other, ...(conflict ? { conflict } : {}) } as Entry], value: found };
      });
      if (!settled.ok) return settled;
      const { value: before, made } = settled.value;
      /**
       * The earlier version of an entry, merged with changes made since the conflict was resolved.
       */
      const back = (entry: Entry, now: Entry): Entry => {
        const then = made.find(({ id }) => id === entry.id) ?? entry;
        if (now.clock === then.clock || !hasBody(then)) return entry;
        return {
          ...entry,
          body: mergeFields<object>(then.body, now.body, entry.body).body,
        } as Entry;
      };
      return ok({
        undo: async () => {
          const undone = await write([of, beside], (found) => ({
            next: before.map((entry, i) => back(entry, found[i]!)),
            value: null,
          }));
          return undone.ok ? ok(null) : undone;
        },
      });
    },
  };
}
