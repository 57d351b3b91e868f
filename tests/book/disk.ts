import 'fake-indexeddb/auto';
import { onTestFinished } from 'vitest';

/** Reaches into the simulated store to make it fail as real ones do. */
interface Inside {
  mode: string;
  error: DOMException | null;
  db: unknown;
  _rollbackLog: (() => void)[];
  dispatchEvent(event: Event & { eventPath?: unknown[] }): boolean;
}

const prototype = IDBTransaction.prototype as unknown as Inside;
const dispatch = prototype.dispatchEvent;

/**
 * From now on every put of a writing transaction succeeds, and then the transaction is undone with
 * this error, as long as `fails` says so. This is what browsers do on a full disk. It ends with the
 * test at the latest: other files share the store.
 */
export function failAtCommit(fails: () => DOMException | null): () => void {
  prototype.dispatchEvent = function (this: Inside, event) {
    const error = event.type === 'complete' && this.mode === 'readwrite' ? fails() : null;
    if (!error) return dispatch.call(this, event);
    for (const undo of this._rollbackLog.reverse()) undo();
    this.error = error;
    const Fake = event.constructor as new (type: string, init: object) => typeof event;
    const abort = new Fake('abort', { bubbles: true, cancelable: false });
    abort.eventPath = [this.db];
    return dispatch.call(this, abort);
  };
  const mend = () => {
    prototype.dispatchEvent = dispatch;
  };
  onTestFinished(mend);
  return mend;
}

/** The next transaction finds its connection dropped, as after a while in the background of a phone. */
export function dropOnce(times = 1): () => number {
  const open = IDBDatabase.prototype.transaction;
  let left = times;
  IDBDatabase.prototype.transaction = function (this: IDBDatabase, ...given) {
    if (left > 0) {
      left--;
      throw new DOMException('The database connection is closing.', 'InvalidStateError');
    }
    IDBDatabase.prototype.transaction = open;
    return open.apply(this, given);
  };
  const mend = () => {
    IDBDatabase.prototype.transaction = open;
    return left;
  };
  onTestFinished(() => {
    mend();
  });
  return mend;
}
