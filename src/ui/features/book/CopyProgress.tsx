import { canShare } from '../../components/save-file.ts';
import { bookTexts, fileSizeWords } from '../../texts/book-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { closeMaking, copyInProgress, deliverCopy, makeNextPart } from './make-copy.ts';

/** Progress of a copy being made, then the ways to save or share it. */
export function CopyProgress() {
  const held = copyInProgress.value;
  return (
    <div class="making" role="status">
      {held?.now.stage === 'making' && (
        <div class="work-line">
          <p>{bookTexts.making}</p>
          <progress max={1} value={held.now.done} aria-label={bookTexts.making} />
          <button type="button" class="quiet" onClick={held.now.stop}>
            {sharedTexts.stop}
          </button>
        </div>
      )}
      {held && held.now.stage !== 'making' && <Ready now={held.now} />}
    </div>
  );
}

type Held = NonNullable<typeof copyInProgress.value>['now'];

function Ready({ now }: { now: Exclude<Held, { stage: 'making' }> }) {
  const { file, made, part, parts, stage } = now;
  return (
    <>
      {parts > 1 && <p>{bookTexts.partOf(part, parts)}</p>}
      <p>{bookTexts.madeOf(made.entries, fileSizeWords(file.size))}</p>
      {made.leftOut.length > 0 && <p>{bookTexts.leftOut(made.leftOut.length)}</p>}
      {stage === 'saved' && <p>{bookTexts.copySaved}</p>}
      <p class="entry-actions">
        {stage === 'saved' && part < parts ? (
          <button type="button" class="main" onClick={() => void makeNextPart(part + 1)}>
            {bookTexts.nextPart}
          </button>
        ) : (
          <>
            {canShare(file) && (
              <button type="button" class="main" onClick={() => void deliverCopy('share')}>
                {bookTexts.share}
              </button>
            )}
            <button
              type="button"
              class={canShare(file) ? '' : 'main'}
              onClick={() => void deliverCopy('save')}
            >
              {bookTexts.save}
            </button>
          </>
        )}
        <button type="button" class="quiet" onClick={closeMaking}>
          {sharedTexts.close}
        </button>
      </p>
    </>
  );
}
