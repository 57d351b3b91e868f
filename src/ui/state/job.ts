import { type ReadonlySignal, signal } from '@preact/signals';
import { isAbort } from '../jobs.ts';
import { complain } from '../studio.ts';

/** What a task is given: when to end, and where to report how far it is. */
export interface TaskOptions {
  readonly signal: AbortSignal;
  /** @param share done so far, 0…1 */
  readonly onNews: (share: number) => void;
}

/** Background work of one kind, one task at a time: start, progress, abort. */
export interface Job {
  /** Share done, 0…1; null while nothing runs. */
  readonly progress: ReadonlySignal<number | null>;
  /** Starts a task; the one before is cancelled. Null where the task was stopped, cancelled or failed. */
  readonly run: <T>(task: (options: TaskOptions) => Promise<T>) => Promise<T | null>;
  /** The painter's stop: the job's `onStop` follows. */
  readonly stop: () => void;
  /** Ends the task without a message: newer work, or a change, made it pointless. */
  readonly cancel: () => void;
}

interface JobReactions {
  /** After the painter stopped it; by default nothing. */
  readonly onStop?: () => void;
  /** After it failed; by default the painter reads the error's message. */
  readonly onError?: (error: unknown) => void;
}

/** An abort like any other to the task, told apart from the painter's stop by its identity. */
const CANCELLED = new DOMException('cancelled', 'AbortError');

export function job({
  onStop,
  onError = (error) => complain((error as Error).message),
}: JobReactions = {}): Job {
  const progress = signal<number | null>(null);
  let current: AbortController | null = null;
  return {
    progress,
    async run(task) {
      current?.abort(CANCELLED);
      const mine = new AbortController();
      current = mine;
      progress.value = 0;
      try {
        return await task({
          signal: mine.signal,
          onNews: (share) => {
            if (current === mine) progress.value = share;
          },
        });
      } catch (error) {
        if (!isAbort(error)) onError(error);
        else if (error !== CANCELLED) onStop?.();
        return null;
      } finally {
        if (current === mine) {
          current = null;
          progress.value = null;
        }
      }
    },
    stop: () => current?.abort(),
    cancel: () => current?.abort(CANCELLED),
  };
}
