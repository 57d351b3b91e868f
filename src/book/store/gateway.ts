import { fail, ok, type Result } from '../../result.ts';
import { type BookFault, faultOf } from '../schema/book-fault.ts';
import { BookFaultError, type Connection, type TableName, type Transaction } from './database.ts';
import { createSaveTracker, type SaveTracker } from './save-state.ts';

export interface BookChange {
  readonly ids: readonly string[];
  readonly from: 'this window' | 'another window';
}

/** The part of BroadcastChannel that the book uses. */
export interface Channel {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent) => void) | null;
  close(): void;
}

/**
 * The gateway for every read and write of the book. It maintains the save state, maps errors to
 * faults, and notifies other windows of changes.
 */
export interface BookGateway {
  readonly saving: SaveTracker;
  /**
   * Runs a write. The save line shows "saving" until it is on disk or has failed; a failed write
   * can be retried.
   * @param key    names the entry in the save state; null for background work that is neither shown
   *   nor retried
   * @param landed called once the write is on disk, at the first attempt or a later one
   */
  write<T>(
    key: string | null,
    tables: readonly TableName[],
    work: (transaction: Transaction<'readwrite'>) => Promise<WriteOutcome<T>>,
    landed?: () => void,
  ): Promise<Result<T, BookFault>>;
  read<T>(
    tables: readonly TableName[],
    work: (transaction: Transaction<'readonly'>) => Promise<T>,
  ): Promise<Result<T, BookFault>>;
  onChange(listener: (change: BookChange) => void): () => void;
  retry(): Promise<void>;
  /** Discards the failed writes under this key, or all of them. */
  forget(key?: string): void;
}
export interface WriteOutcome<T> {
  readonly value: T;
  /** Ids of the entries that changed. */
  readonly ids: readonly string[];
}

const faultIn = (error: unknown, otherwise: 'not-written' | 'not-read'): BookFault =>
  error instanceof BookFaultError ? error.fault : faultOf(error, otherwise);

export function createBookGateway(connection: Connection, channel: Channel | null): BookGateway {
  const saving = createSaveTracker();
  const listeners = new Set<(change: BookChange) => void>();
  const again = new Map<string, () => Promise<unknown>>();

  const tell = (change: BookChange) => {
    for (const listener of [...listeners]) listener(change);
  };
  if (channel)
    channel.onmessage = ({ data }) => {
      if (Array.isArray(data)) tell({ ids: data.map(String), from: 'another window' });
    };

  const ledger: BookGateway = {
    saving,
    async write(key, tables, work, landed) {
      const mark = key === null ? null : saving.begin(key);
      try {
        const { value, ids } = await connection.run('readwrite', tables, work);
        if (key !== null) again.delete(key);
        mark?.durable();
        landed?.();
        if (ids.length > 0) {
          tell({ ids, from: 'this window' });
          channel?.postMessage(ids);
        }
        return ok(value);
      } catch (error) {
        const fault = faultIn(error, 'not-written');
        if (fault.code === 'not-found' || fault.code === 'stopped') mark?.dropped();
        else {
          if (key !== null) again.set(key, () => ledger.write(key, tables, work, landed));
          mark?.failed(fault);
        }
        return fail(fault);
      }
    },
    async read(tables, work) {
      try {
        return ok(await connection.run('readonly', tables, work));
      } catch (error) {
        return fail(faultIn(error, 'not-read'));
      }
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async retry() {
      for (const attempt of [...again.values()]) await attempt();
    },
    forget(key) {
      if (key === undefined) again.clear();
      else again.delete(key);
      saving.forget(key);
    },
  };
  return ledger;
}
