import { useEffect } from 'preact/hooks';
import { isSample } from '../../../book/schema/sample-ids.ts';
import { BinIcon, BookIcon } from '../../components/drawn/icons.tsx';
import { go } from '../../state/route.ts';
import { book } from '../../state/studio.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { loadEntries } from './entry-list.ts';
import { copyImport } from './import-copy.ts';
import {
  importSampleBook,
  isBringingSample,
  removeSampleBook,
  samplesThere,
} from './import-sample.ts';

/**
 * Offers the sample book while none of its entries is in the book.
 * @param quiet shown beside other ways to begin, so not as the main action
 */
export function SampleOffer({ quiet = false }: { quiet?: boolean }) {
  useEffect(loadEntries, []);
  const now = isBringingSample.value ? copyImport.value : null;
  const isBusy = isBringingSample.value || copyImport.value !== null;
  if (book.value?.readOnly !== null || samplesThere.value !== 0) return null;
  return (
    <section class="part" aria-labelledby="sample-heading">
      <h2 id="sample-heading">{bookTexts.sampleHeading}</h2>
      <p>{bookTexts.sampleAbout}</p>
      {!isBusy && (
        <p class="main-actions">
          <button
            type="button"
            class={quiet ? '' : 'main'}
            onClick={() => {
              void importSampleBook().then((there) => {
                if (there) go('book');
              });
            }}
          >
            <BookIcon size={20} />
            {bookTexts.sampleBring}
          </button>
        </p>
      )}
      <div class="work-line" role="status">
        {now && now.stage !== 'looked' && (
          <>
            <p>{bookTexts.sampleBringing}</p>
            <progress max={1} value={now.done} aria-label={bookTexts.sampleBringing} />
            <button type="button" class="quiet" onClick={now.stop}>
              {sharedTexts.stop}
            </button>
          </>
        )}
      </div>
    </section>
  );
}

/** Says that the sample book is in the book, with a button that removes it. */
export function SampleLine() {
  const there = samplesThere.value;
  if (!there || book.value?.readOnly !== null) return null;
  return (
    <div class="sample-line">
      <p>{bookTexts.sampleHere(there)}</p>
      <button type="button" onClick={() => void removeSampleBook()}>
        <BinIcon size={20} />
        {bookTexts.sampleThrow}
      </button>
    </div>
  );
}

/** Marks an entry of the sample book. */
export const SampleMark = ({ id }: { id: string }) =>
  isSample(id) ? <span class="sample-mark">{bookTexts.sampleMark}</span> : null;
