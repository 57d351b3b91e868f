import './book.css';
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import type { Kind } from '../../../book/schema/record.ts';
import { BinIcon } from '../../components/drawn/icons.tsx';
import { dateWords } from '../../state/locale-format.ts';
import { hrefOf } from '../../state/route.ts';
import { book } from '../../state/studio.ts';
import { bookTexts } from '../../texts/book-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { useThumbnail } from './EntryThumbnail.tsx';
import { putIntoBin, Renaming } from './entry-actions.tsx';
import {
  clearSearch,
  entrySummaries,
  searchKind as kindSought,
  loadEntries,
} from './entry-list.ts';
import { nameOfCard } from './entry-names.ts';
import { SampleLine, SampleMark } from './SampleBook.tsx';
import { CopyReminder } from './StorageStatus.tsx';
import { dabs } from './thumbnail-strokes.ts';

/** Number of entries shown outside the book; the book lists all. */
const MOST = 24;

/** The most recent entries of one kind, with their actions. */
export function RecentEntries({
  kind,
  heading,
  empty,
}: {
  kind: Kind;
  heading: string;
  empty: ComponentChildren;
}) {
  useEffect(loadEntries, []);
  if (entrySummaries.value === null)
    return <p role="status">{book.value && sharedTexts.bookOpening}</p>;
  const all = entrySummaries.value.filter((card) => card.kind === kind);
  if (all.length === 0) return empty;
  return (
    <>
      <h2>{heading}</h2>
      <CopyReminder />
      <SampleLine />
      <ul class="cards">
        {all.slice(0, MOST).map((card) => (
          <li key={card.id}>
            <EntryCard card={card} />
          </li>
        ))}
      </ul>
      {all.length > MOST && (
        <p>
          <a
            href={hrefOf('book')}
            onClick={() => {
              clearSearch();
              kindSought.value = kind;
            }}
          >
            {bookTexts.moreInBook}
          </a>
        </p>
      )}
    </>
  );
}

function EntryCard({ card }: { card: EntrySummary }) {
  const [renaming, setRenaming] = useState(false);
  const name = nameOfCard(card);
  return (
    <article class="card">
      <a
        class="card-open"
        href={hrefOf('harmony', card.id)}
        aria-label={`${sharedTexts.open}: ${name}`}
      >
        <CardPicture card={card} />
      </a>
      {renaming ? (
        <Renaming card={card} done={() => setRenaming(false)} />
      ) : (
        <h3>
          <a href={hrefOf('harmony', card.id)}>{name}</a>
        </h3>
      )}
      <p class="small">
        {dateWords(card.date)} <SampleMark id={card.id} />
      </p>
      {!renaming && book.value?.readOnly === null && (
        <p class="card-actions">
          <button
            type="button"
            class="quiet"
            onClick={() => setRenaming(true)}
            aria-label={`${sharedTexts.rename}: ${name}`}
          >
            {sharedTexts.rename}
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => void putIntoBin(card)}
            aria-label={`${sharedTexts.remove}: ${name}`}
          >
            <BinIcon size={20} />
            {sharedTexts.remove}
          </button>
        </p>
      )}
    </article>
  );
}

/** Thumbnail of the photograph, with the gathered colours below it. */
function CardPicture({ card }: { card: EntrySummary }) {
  const url = useThumbnail(card);
  return (
    <span class="card-picture">
      {url ? <img src={url} alt="" width="320" height="240" /> : <span class="no-picture" />}
      <svg class="card-dabs" viewBox="0 0 320 44" aria-hidden="true">
        {dabs(card.colours, 44, 10).map(({ x, r, hex }) => (
          <ellipse key={x} cx={x} cy="22" rx={r} ry={r * 0.86} fill={hex} />
        ))}
      </svg>
    </span>
  );
}
