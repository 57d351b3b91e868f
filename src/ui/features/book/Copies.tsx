import { useEffect, useRef } from 'preact/hooks';
import type { ImportPreview, Several } from '../../../../workers/copy.ts';
import { dateWords, formatCount as number } from '../../state/locale-format.ts';
import { lastCopyTime } from '../../state/storage-promise.ts';
import { book } from '../../state/studio.ts';
import { bookTexts, KIND_WORDS } from '../../texts/book-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { CopyProgress } from './CopyProgress.tsx';
import { Dabs } from './EntryThumbnail.tsx';
import { nameOfCard } from './entry-names.ts';
import {
  changedEntryCount,
  copyImport,
  discardPreview,
  importPreviewedCopy,
  previewCopyFile,
} from './import-copy.ts';
import { isBringingSample } from './import-sample.ts';
import { copyInProgress, makeBookCopy } from './make-copy.ts';
import { SampleOffer } from './SampleBook.tsx';
import { changedSince, StorageStatus } from './StorageStatus.tsx';

/** Export and import of copies. */
export function Copies() {
  return (
    <div class="copies">
      <Make />
      {book.value?.readOnly === null && <Bring />}
      <SampleOffer quiet />
      <StorageStatus />
    </div>
  );
}

function Make() {
  const last = lastCopyTime.value;
  const isRunning = copyInProgress.value?.of === null;
  return (
    <section class="part" aria-labelledby="make-heading">
      <h2 id="make-heading">{bookTexts.makeHeading}</h2>
      <p>{bookTexts.makeAbout}</p>
      <p class="small">
        {last === null
          ? bookTexts.noCopy
          : `${bookTexts.lastCopy(dateWords(last))} ${bookTexts.changedSince(changedSince())}`}
      </p>
      {!isRunning && (
        <p class="main-actions">
          <button type="button" class="main" onClick={() => void makeBookCopy()}>
            {bookTexts.make}
          </button>
        </p>
      )}
      {isRunning && <CopyProgress />}
    </section>
  );
}

function Bring() {
  const now = copyImport.value;
  const input = useRef<HTMLInputElement>(null);
  const onChange = () => {
    const file = input.current?.files?.[0];
    if (!file) return;
    // Reset the input, so that the same file can be chosen again.
    void previewCopyFile(file).finally(() => {
      if (input.current) input.current.value = '';
    });
  };
  return (
    <section class="part" aria-labelledby="bring-heading">
      <h2 id="bring-heading">{bookTexts.bringHeading}</h2>
      <p>{bookTexts.bringAbout}</p>
      {(now === null || now.stage === 'looked') && (
        <p class="main-actions">
          <label class="button">
            {bookTexts.bring}
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
            <p>{now.stage === 'looking' ? bookTexts.looking : bookTexts.bringing}</p>
            <progress max={1} value={now.done} aria-label={bookTexts.bringing} />
            <button type="button" class="quiet" onClick={now.stop}>
              {sharedTexts.stop}
            </button>
          </>
        )}
      </div>
      {now?.stage === 'looked' && !isBringingSample.value && <Preview looked={now.looked} />}
    </section>
  );
}

const SORTS = ['added', 'changed', 'deleted', 'kept', 'settled'] as const;

function Preview({ looked }: { looked: ImportPreview }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    heading.current?.scrollIntoView({ block: 'center' });
  }, [looked]);
  const count = changedEntryCount(looked);
  return (
    <section class="preview" aria-labelledby="preview-heading">
      <h3 id="preview-heading" ref={heading} tabIndex={-1}>
        {bookTexts.previewHeading(dateWords(looked.made))}
      </h3>
      {SORTS.map((sort) => (
        <Sort key={sort} heading={bookTexts[sort]} several={looked[sort]} />
      ))}
      {count === 0 && <p>{bookTexts.nothingNew}</p>}
      {count > 0 && looked.same > 0 && <p>{bookTexts.same(looked.same)}</p>}
      <p class="entry-actions">
        {count > 0 && (
          <button type="button" class="main" onClick={() => void importPreviewedCopy()}>
            {bookTexts.bringIn}
          </button>
        )}
        <button type="button" class="quiet" onClick={discardPreview}>
          {sharedTexts.cancel}
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
        {count > first.length && <li>{bookTexts.andMore(count - first.length)}</li>}
      </ul>
    </details>
  );
}
