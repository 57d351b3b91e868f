import { type ReadonlySignal, signal } from '@preact/signals';
import { showError } from './studio.ts';
import { isAbort } from './worker-jobs.ts';

/** Passed to a task: when to abort, and where to report progress. */
export interface TaskOptions {
  readonly signal: AbortSignal;
  /** @param share done so far, 0…1 */
  readonly onProgress: (share: number) => void;
}

/** Background work of one kind, one task at a time, with progress and abort. */
export interface Job {
  /** Share done, 0…1; null while nothing runs. */
  readonly progress: ReadonlySignal<number | null>;
  /**
   * Starts a task and cancels the one before. Resolves with null when it is stopped, cancelled or
   * fails.
   */
  readonly run: <T>(task: (options: TaskOptions) => Promise<T>) => Promise<T | null>;
  /** User abort: calls the job's `onStop`. */
  readonly stop: () => void;
  /** Aborts without a message, because newer work or a change made the task obsolete. */
  readonly cancel: () => void;
}

interface JobReactions {
  /** Called after a user abort; by default nothing. */
  readonly onStop?: () => void;
  /** Called after a failure; by default shows the error's message. */
  readonly onError?: (error: unknown) => void;
}

/**
 * Abort reason of `cancel`: an AbortError to the task, distinguished from a user abort by identity.
 */
const CANCELLED = new DOMException('cancelled', 'AbortError');

/** Creates a job with its own progress. */
export function job({
  onStop,
  onError = (error) => showError((error as Error).message),
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
          onProgress: (share) => {
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
