import type { BookFault } from './faults.ts';

/** What the line on the screen may say. */
export type SaveState =
  | { readonly state: 'saved' }
  | { readonly state: 'saving' }
  | { readonly state: 'not saved'; readonly fault: BookFault };

export interface Saving {
  /** As of now. */
  readonly now: SaveState;
  /** Calls back at once and at every change; the answer ends it. */
  subscribe(listener: (state: SaveState) => void): () => void;
  /** Marks something as not yet on disk; call exactly one of the three when that is settled. */
  begin(key: string): {
    durable(): void;
    failed(fault: BookFault): void;
    /** There was nothing to save after all. */
    dropped(): void;
  };
  /** The painter gives up an entry that could not be saved; all such when no key is given. */
  forget(key?: string): void;
}

/**
 * Keeps the line honest. It says "saved" only while nothing is under way and nothing has failed; a
 * failure stays until the same entry was saved after it or the painter gives it up, whatever else is
 * saved meanwhile.
 */
export function createSaving(): Saving {
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
