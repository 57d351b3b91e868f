import type { SyncStorage } from '../../src/book/recovery/pending-writes.ts';

/** A browser's own notes, and those of a browser that lets nobody write. */
export class Notes extends Map<string, string> implements SyncStorage {
  get length() {
    return this.size;
  }
  key = (index: number) => [...this.keys()][index] ?? null;
  getItem = (key: string) => this.get(key) ?? null;
  setItem = (key: string, value: string) => void this.set(key, value);
  removeItem = (key: string) => void this.delete(key);
  /** How many of them are of what was on its way when a page closed. */
  get slips() {
    return [...this.keys()].filter((key) => key.includes(' slip ')).length;
  }
}
const refuse = () => {
  throw new DOMException('denied', 'SecurityError');
};
export const CLOSED: SyncStorage = {
  length: 1,
  key: refuse,
  getItem: refuse,
  setItem: refuse,
  removeItem: refuse,
};
