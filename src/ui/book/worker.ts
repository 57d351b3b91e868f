import type { CopyAnswer, CopyJob, CopyNews } from '../../../workers/copy.ts';
import type { Reply } from '../../../workers/jobs.ts';

/** A worker that keeps what it has opened between questions. */
export interface Talk {
  /** Rejects with an AbortError once the talk has ended. */
  ask(job: CopyJob, onNews?: (done: number) => void): Promise<CopyAnswer>;
  /** Asks the running work to stop; that work's own answer says whether it did. */
  stop(): void;
  /** Ends the worker at once: only where nothing is being written. */
  end(): void;
}

export function talkOfCopies(): Talk {
  const worker = new Worker(new URL('../../../workers/copy.worker.ts', import.meta.url), {
    type: 'module',
  });
  const ended = new AbortController();
  return {
    ask: (job, onNews) =>
      new Promise((resolve, reject) => {
        ended.signal.throwIfAborted();
        ended.signal.addEventListener('abort', () => reject(ended.signal.reason), { once: true });
        worker.onerror = (event) => reject(new Error(event.message || 'the worker did not start'));
        worker.onmessage = ({ data }: MessageEvent<Reply<CopyAnswer, CopyNews>>) => {
          if (data.kind === 'news') onNews?.(data.news);
          else if (data.kind === 'failed') reject(new Error(data.message));
          else if (data.value.kind === job.kind) resolve(data.value);
        };
        worker.postMessage(job);
      }),
    stop: () => worker.postMessage({ kind: 'stop' } satisfies CopyJob),
    end() {
      ended.abort(new DOMException('ended', 'AbortError'));
      worker.terminate();
    },
  };
}
