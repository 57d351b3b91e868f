import type { BookFault } from '../schema/book-fault.ts';

/** States of the save line. */
export type SaveState =
  | { readonly state: 'saved' }
  | { readonly state: 'saving' }
  | { readonly state: 'not saved'; readonly fault: BookFault };

export interface SaveTracker {
  readonly now: SaveState;
  /**
   * Calls `listener` at once and at every change.
   * @returns ends the subscription
   */
  subscribe(listener: (state: SaveState) => void): () => void;
  /**
   * Marks something as not yet on disk. Call exactly one of the three methods when the outcome is
   * known.
   */
  begin(key: string): {
    durable(): void;
    failed(fault: BookFault): void;
    /** There was nothing to save. */
    dropped(): void;
  };
  /** The painter discards an entry that could not be saved; without a key, all such entries. */
  forget(key?: string): void;
}

/**
 * Maintains the save state. It is "saved" only while no write is pending and none has failed. A
 * failure stays until a later write of the same entry succeeds or the painter discards it; other
 * writes do not clear it.
 */
export function createSaveTracker(): SaveTracker {
  const pending = new Map<object, string>();
  const failures = new Map<string, BookFault>();
  const listeners = new Set<(state: SaveState) => void>();
  let now: SaveState = { state: 'saved' };

  const settle = () => {
    const fault = failures.values().next().value;
    const next: SaveState = fault
      ? { state: 'not saved', fault }
      : { state: pending.size > 0 ? 'saving' : 'saved' };
    if (next.state === now.state && next.state !== 'not saved') return;
    now = next;
    for (const listener of [...listeners]) listener(now);
  };

  return {
    get now() {
      return now;
    },
    subscribe(listener) {
      listeners.add(listener);
      listener(now);
      return () => listeners.delete(listener);
    },
    begin(key) {
      const token = {};
      pending.set(token, key);
      settle();
      return {
        durable() {
          if (!pending.delete(token)) return;
          failures.delete(key);
          settle();
        },
        dropped() {
          if (pending.delete(token)) settle();
        },
        failed(fault) {
          if (!pending.delete(token)) return;
          failures.set(key, fault);
          settle();
        },
      };
    },
    forget(key) {
      if (key === undefined) failures.clear();
      else failures.delete(key);
      settle();
    },
  };
}
