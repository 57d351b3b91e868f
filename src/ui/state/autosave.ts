/** Writes what changed once changes have paused, or earlier when it is asked to. */
export interface Autosave {
  /** Something changed: write after the pause, counted from the latest change. */
  readonly schedule: () => void;
  /** Writes now what waits to be written; nothing where nothing waits. */
  readonly flush: () => Promise<void>;
  /** Forgets what waits: the caller writes it in another way. */
  readonly cancel: () => void;
}

/** @param pauseMs from the latest change to the write */
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
