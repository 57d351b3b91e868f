/** A debounced write, with a way to force or drop it. */
interface Autosave {
  /** Schedules a write after the pause; each call restarts the pause. */
  readonly schedule: () => void;
  /** Writes now if a write is pending; otherwise does nothing. Rejects when the write does. */
  readonly flush: () => Promise<void>;
  /** Drops the pending write, because the caller saves in another way. */
  readonly cancel: () => void;
}

/**
 * Creates a debounced write.
 *
 * @param pauseMs from the latest change to the write, ms
 */
export function autosave(pauseMs: number, write: () => Promise<void>): Autosave {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const cancel = () => {
    clearTimeout(timer);
    timer = undefined;
  };
  const flush = async () => {
    if (timer === undefined) return;
    cancel();
    await write();
  };
  return {
    schedule: () => {
      clearTimeout(timer);
      timer = setTimeout(() => void flush(), pauseMs);
    },
    flush,
    cancel,
  };
}
