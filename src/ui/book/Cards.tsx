import './book.css';
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Card } from '../../book/card.ts';
import type { Kind } from '../../book/record.ts';
import { BinIcon } from '../drawn/icons.tsx';
import { dateWords } from '../locale.ts';
import { hrefOf } from '../route.ts';
import { book } from '../studio.ts';
import { sayBook } from '../words/book.ts';
import { say } from '../words/frame.ts';
import { putIntoBin, Renaming } from './actions.tsx';
import { dabs } from './dabs.ts';
import { CopyReminder } from './Keeping.tsx';
import { nameOfCard } from './names.ts';
import { useThumbnail } from './Picture.tsx';
import { SampleLine, SampleMark } from './SampleBook.tsx';
import { cards, clearSearch, kind as kindSought, wantCards } from './state.ts';

/** Number of entries shown outside the book; the book lists all. */
const MOST = 24;

/** The most recent entries of one kind, with their actions. */
export function Cards({
  kind,
  heading,
  empty,
}: {
  kind: Kind;
  heading: string;
  empty: ComponentChildren;
}) {
  useEffect(wantCards, []);
  if (cards.value === null) return <p role="status">{book.value && say.bookOpening}</p>;
  const all = cards.value.filter((card) => card.kind === kind);
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
            {sayBook.moreInBook}
          </a>
        </p>
      )}
    </>
  );
}

function EntryCard({ card }: { card: Card }) {
  const [renaming, setRenaming] = useState(false);
  const name = nameOfCard(card);
  return (
    <article class="card">
      <a class="card-open" href={hrefOf('harmony', card.id)} aria-label={`${say.open}: ${name}`}>
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
            aria-label={`${say.rename}: ${name}`}
          >
            {say.rename}
          </button>
          <button
            type="button"
            class="quiet"
            onClick={() => void putIntoBin(card)}
            aria-label={`${say.remove}: ${name}`}
          >
            <BinIcon size={20} />
            {say.remove}
          </button>
        </p>
      )}
    </article>
  );
}

/** Thumbnail of the photograph, with the gathered colours below it. */
function CardPicture({ card }: { card: Card }) {
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
