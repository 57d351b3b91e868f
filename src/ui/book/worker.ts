import type { CopyAnswer, CopyJob, CopyNews } from '../../../workers/copy.ts';
import { Helper } from '../../../workers/jobs.ts';

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
  const helper = new Helper<CopyJob, CopyAnswer, CopyNews>(
    () =>
      new Worker(new URL('../../../workers/copy.worker.ts', import.meta.url), { type: 'module' }),
  );
  const ended = new AbortController();
  return {
    ask: (job, onNews) =>
      new Promise((resolve, reject) => {
        ended.signal.throwIfAborted();
        ended.signal.addEventListener('abort', () => reject(ended.signal.reason), { once: true });
        helper.onFail = (why) => reject(new Error(why));
        helper.onReply = (reply) => {
          if (reply.kind === 'news') onNews?.(reply.news);
          else if (reply.kind === 'failed') reject(new Error(reply.message));
          else if (reply.value.kind === job.kind) resolve(reply.value);
        };
        helper.send(job);
      }),
    stop: () => helper.send({ kind: 'stop' }),
    end() {
      ended.abort(new DOMException('ended', 'AbortError'));
      helper.end();
    },
  };
}
