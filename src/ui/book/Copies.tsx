import { useEffect, useRef } from 'preact/hooks';
import type { Looked, Several } from '../../../workers/copy.ts';
import { dateWords, count as number } from '../locale.ts';
import { book } from '../studio.ts';
import { KIND_WORDS, sayBook } from '../words/book.ts';
import { say } from '../words/frame.ts';
import { bringIn, bringing, dropCopy, lookAt, touched } from './bringing.ts';
import { changedSince, Keeping } from './Keeping.tsx';
import { copied } from './keeping.ts';
import { MakingLine } from './MakingLine.tsx';
import { makeBookCopy, making } from './making.ts';
import { nameOfCard } from './names.ts';
import { Dabs } from './Picture.tsx';
import { SampleOffer } from './SampleBook.tsx';
import { isBringingSample } from './sample.ts';

/** Export and import of copies. */
export function Copies() {
  return (
    <div class="copies">
      <Make />
      {book.value?.readOnly === null && <Bring />}
      <SampleOffer quiet />
      <Keeping />
    </div>
  );
}

function Make() {
  const last = copied.value;
  const isRunning = making.value?.of === null;
  return (
    <section class="part" aria-labelledby="make-heading">
      <h2 id="make-heading">{sayBook.makeHeading}</h2>
      <p>{sayBook.makeAbout}</p>
      <p class="small">
        {last === null
          ? sayBook.noCopy
          : `${sayBook.lastCopy(dateWords(last))} ${sayBook.changedSince(changedSince())}`}
      </p>
      {!isRunning && (
        <p class="main-actions">
          <button type="button" class="main" onClick={() => void makeBookCopy()}>
            {sayBook.make}
          </button>
        </p>
      )}
      {isRunning && <MakingLine />}
    </section>
  );
}

function Bring() {
  const now = bringing.value;
  const input = useRef<HTMLInputElement>(null);
  const onChange = () => {
    const file = input.current?.files?.[0];
    if (!file) return;
    // Reset the input, so that the same file can be chosen again.
    void lookAt(file).finally(() => {
      if (input.current) input.current.value = '';
    });
  };
  return (
    <section class="part" aria-labelledby="bring-heading">
      <h2 id="bring-heading">{sayBook.bringHeading}</h2>
      <p>{sayBook.bringAbout}</p>
      {(now === null || now.stage === 'looked') && (
        <p class="main-actions">
          <label class="button">
            {sayBook.bring}
            <input
              ref={input}
              class="unseen"
              type="file"
              accept=".zip,application/zip"
              onChange={onChange}
            />
          </label>
        </p>
      )}
      <div class="work-line" role="status">
        {now && now.stage !== 'looked' && !isBringingSample.value && (
          <>
            <p>{now.stage === 'looking' ? sayBook.looking : sayBook.bringing}</p>
            <progress max={1} value={now.done} aria-label={sayBook.bringing} />
            <button type="button" class="quiet" onClick={now.stop}>
              {say.stop}
            </button>
          </>
        )}
      </div>
      {now?.stage === 'looked' && !isBringingSample.value && <Preview looked={now.looked} />}
    </section>
  );
}

const SORTS = ['added', 'changed', 'deleted', 'kept', 'settled'] as const;

function Preview({ looked }: { looked: Looked }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    heading.current?.scrollIntoView({ block: 'center' });
  }, [looked]);
  const count = touched(looked);
  return (
    <section class="preview" aria-labelledby="preview-heading">
      <h3 id="preview-heading" ref={heading} tabIndex={-1}>
        {sayBook.previewHeading(dateWords(looked.made))}
      </h3>
      {SORTS.map((sort) => (
        <Sort key={sort} heading={sayBook[sort]} several={looked[sort]} />
      ))}
      {count === 0 && <p>{sayBook.nothingNew}</p>}
      {count > 0 && looked.same > 0 && <p>{sayBook.same(looked.same)}</p>}
      <p class="entry-actions">
        {count > 0 && (
          <button type="button" class="main" onClick={() => void bringIn()}>
            {sayBook.bringIn}
          </button>
        )}
        <button type="button" class="quiet" onClick={dropCopy}>
          {say.cancel}
        </button>
      </p>
    </section>
  );
}

function Sort({ heading, several }: { heading: string; several: Several }) {
  const { count, first } = several;
  if (count === 0) return null;
  return (
    <details open={count <= 12}>
      <summary>
        {heading}: {number(count)}
      </summary>
      <ul class="preview-list">
        {first.map((card) => (
          <li key={card.id}>
            <span>{nameOfCard(card)}</span>
            <span class="small">
              {KIND_WORDS[card.kind]} · {dateWords(card.date)}
            </span>
            <Dabs card={card} width={180} height={18} />
          </li>
        ))}
        {count > first.length && <li>{sayBook.andMore(count - first.length)}</li>}
      </ul>
    </details>
  );
}
