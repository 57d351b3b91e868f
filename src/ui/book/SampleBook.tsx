import { useEffect } from 'preact/hooks';
import { isSample } from '../../book/sampled.ts';
import { BinIcon, BookIcon } from '../drawn/icons.tsx';
import { go } from '../route.ts';
import { book } from '../studio.ts';
import { sayBook } from '../words/book.ts';
import { say } from '../words/frame.ts';
import { bringing } from './bringing.ts';
import { bringSample, isBringingSample, samplesThere, throwSampleAway } from './sample.ts';
import { wantCards } from './state.ts';

/**
 * Offers the sample book while none of its entries is in the book.
 * @param quiet shown beside other ways to begin, so not as the main action
 */
export function SampleOffer({ quiet = false }: { quiet?: boolean }) {
  useEffect(wantCards, []);
  const now = isBringingSample.value ? bringing.value : null;
  const isBusy = isBringingSample.value || bringing.value !== null;
  if (book.value?.readOnly !== null || samplesThere.value !== 0) return null;
  return (
    <section class="part" aria-labelledby="sample-heading">
      <h2 id="sample-heading">{sayBook.sampleHeading}</h2>
      <p>{sayBook.sampleAbout}</p>
      {!isBusy && (
        <p class="main-actions">
          <button
            type="button"
            class={quiet ? '' : 'main'}
            onClick={() => {
              void bringSample().then((there) => {
                if (there) go('book');
              });
            }}
          >
            <BookIcon size={20} />
            {sayBook.sampleBring}
          </button>
        </p>
      )}
      <div class="work-line" role="status">
        {now && now.stage !== 'looked' && (
          <>
            <p>{sayBook.sampleBringing}</p>
            <progress max={1} value={now.done} aria-label={sayBook.sampleBringing} />
            <button type="button" class="quiet" onClick={now.stop}>
              {say.stop}
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
      <p>{sayBook.sampleHere(there)}</p>
      <button type="button" onClick={() => void throwSampleAway()}>
        <BinIcon size={20} />
        {sayBook.sampleThrow}
      </button>
    </div>
  );
}

/** Marks an entry of the sample book. */
export const SampleMark = ({ id }: { id: string }) =>
  isSample(id) ? <span class="sample-mark">{sayBook.sampleMark}</span> : null;
