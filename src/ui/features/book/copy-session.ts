import type { CopyAnswer, CopyJob, CopyNews } from '../../../../workers/copy.ts';
import { ReadyWorker } from '../../../../workers/job-protocol.ts';

/** A worker session that keeps its state between requests. */
export interface CopySession {
  /** Sends a request. Rejects with an AbortError once the session has ended. */
  ask(job: CopyJob, onNews?: (done: number) => void): Promise<CopyAnswer>;
  /** Requests a stop of the running job; that job's reply says whether it stopped. */
  stop(): void;
  /** Terminates the worker at once. Call it only while nothing is being written. */
  end(): void;
}

/** Starts the worker that makes, opens and merges copies. */
export function openCopySession(): CopySession {
  const helper = new ReadyWorker<CopyJob, CopyAnswer, CopyNews>(
    () =>
      new Worker(new URL('../../../../workers/copy.worker.ts', import.meta.url), {
        type: 'module',
      }),
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
