import { sayBook, sizeWords } from '../words/book.ts';
import { say } from '../words/frame.ts';
import { canShare } from './hand.ts';
import { closeMaking, handOver, makeNextPart, making } from './making.ts';

/** Progress of a copy being made, then the ways to save or share it. */
export function MakingLine() {
  const held = making.value;
  return (
    <div class="making" role="status">
      {held?.now.stage === 'making' && (
        <div class="work-line">
          <p>{sayBook.making}</p>
          <progress max={1} value={held.now.done} aria-label={sayBook.making} />
          <button type="button" class="quiet" onClick={held.now.stop}>
            {say.stop}
          </button>
        </div>
      )}
      {held && held.now.stage !== 'making' && <Ready now={held.now} />}
    </div>
  );
}

type Held = NonNullable<typeof making.value>['now'];

function Ready({ now }: { now: Exclude<Held, { stage: 'making' }> }) {
  const { file, made, part, parts, stage } = now;
  return (
    <>
      {parts > 1 && <p>{sayBook.partOf(part, parts)}</p>}
      <p>{sayBook.madeOf(made.entries, sizeWords(file.size))}</p>
      {made.leftOut.length > 0 && <p>{sayBook.leftOut(made.leftOut.length)}</p>}
      {stage === 'saved' && <p>{sayBook.copySaved}</p>}
      <p class="entry-actions">
        {stage === 'saved' && part < parts ? (
          <button type="button" class="main" onClick={() => void makeNextPart(part + 1)}>
            {sayBook.nextPart}
          </button>
        ) : (
          <>
            {canShare(file) && (
              <button type="button" class="main" onClick={() => void handOver('share')}>
                {sayBook.share}
              </button>
            )}
            <button
              type="button"
              class={canShare(file) ? '' : 'main'}
              onClick={() => void handOver('save')}
            >
              {sayBook.save}
            </button>
          </>
        )}
        <button type="button" class="quiet" onClick={closeMaking}>
          {say.close}
        </button>
      </p>
    </>
  );
}
