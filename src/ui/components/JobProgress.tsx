import type { Job } from '../state/job.ts';
import { sharedTexts } from '../texts/shared-texts.ts';

/** Progress of a job with a stop button; empty while it is idle. @param words label */
export function JobProgress({ work, words }: { work: Job; words: string }) {
  const done = work.progress.value;
  return (
    <div class="work-line" role="status">
      {done !== null && (
        <>
          <p>{words}</p>
          <progress max={1} value={done} aria-label={words} />
          <button type="button" class="quiet" onClick={work.stop}>
            {sharedTexts.stop}
          </button>
        </>
      )}
    </div>
  );
}
