import { type Signal, signal } from '@preact/signals';
import { isStop } from '../../jobs.ts';
import { complain } from '../../studio.ts';

interface Options {
  readonly signal: AbortSignal;
  readonly onNews: (done: number) => void;
}

/** One kind of work at a time: how far it is, and how it is stopped. */
export interface Work {
  /** 0…1; null when nothing is under way. */
  readonly done: Signal<number | null>;
  /** Begins anew, stopping what was under way. Gives null where it was stopped or failed. */
  readonly run: <T>(task: (options: Options) => Promise<T>) => Promise<T | null>;
  readonly stop: () => void;
}

export function newWork(): Work {
  const done = signal<number | null>(null);
  let controller: AbortController | null = null;
  return {
    done,
    async run(task) {
      controller?.abort();
      const mine = new AbortController();
      controller = mine;
      done.value = 0;
      try {
        return await task({
          signal: mine.signal,
          onNews: (share) => {
            if (controller === mine) done.value = share;
          },
        });
      } catch (error) {
        if (!isStop(error)) complain((error as Error).message);
        return null;
      } finally {
        if (controller === mine) {
          controller = null;
          done.value = null;
        }
      }
    },
    stop: () => controller?.abort(),
  };
}
