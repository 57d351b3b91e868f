import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Card } from '../../book/card.ts';
import { bookFaultWords } from '../../book/faults.ts';
import type { Entry } from '../../book/record.ts';
import type { Lab } from '../../colour/lab.ts';
import { ClothLine } from '../drawn/ClothLine.tsx';
import { BinIcon, SearchIcon } from '../drawn/icons.tsx';
import { Patch } from '../drawn/Patch.tsx';
import { shownOf } from '../drawn/screen.ts';
import { seedOf } from '../drawn/seed.ts';
import { dateWords } from '../locale.ts';
import { go, hrefOf, route } from '../route.ts';
import { book, complain } from '../studio.ts';
import { KIND_WORDS, sayBook } from '../words/book.ts';
import { putIntoBin, Renaming } from './actions.tsx';
import { contentsOf, type Line } from './contents.ts';
import { clothsOf } from './Drawing.tsx';
import { nameOfCard, pigmentWords } from './names.ts';
import { Onward } from './Onward.tsx';
import { Out, Printed } from './Out.tsx';
import { Photograph } from './Photograph.tsx';
import { SampleMark } from './SampleBook.tsx';
import { cards, colour, scrolled } from './state.ts';
import { Versions } from './Versions.tsx';

/** One complete entry with its actions. */
export function EntryPane({ id, back = false }: { id: string; back?: boolean }) {
  const card = cards.value?.find((one) => one.id === id) ?? null;
  const entry = useEntry(card);
  const heading = useRef<HTMLHeadingElement>(null);
  // A layout effect, so that a key pressed at once already acts from here.
  useLayoutEffect(() => {
    if (back) heading.current?.focus();
  }, [id, back]);
  return (
    <article class="entry">
      {back && (
        <p>
          <a class="back" href={hrefOf('book')}>
            {sayBook.back}
          </a>
        </p>
      )}
      {card === null ? (
        <>
          <h2 ref={heading} tabIndex={-1}>
            {sayBook.goneHeading}
          </h2>
          <p>{sayBook.gone}</p>
          <p class="main-actions">
            <a class="button main" href={hrefOf('book')}>
              {sayBook.back}
            </a>
            <a class="button" href={hrefOf('book', 'bin')}>
              {sayBook.toBin}
            </a>
          </p>
        </>
      ) : (
        <>
          <Heading key={card.id} card={card} at={heading} />
          <Versions card={card} />
          {entry && <Body entry={entry} card={card} />}
        </>
      )}
    </article>
  );
}

function useEntry(card: Card | null): Entry | null {
  const [entry, setEntry] = useState<Entry | null>(null);
  useEffect(() => {
    let gone = false;
    if (card)
      void book.value?.get(card.kind, card.id).then((found) => {
        if (gone) return;
        if (found.ok) setEntry(found.value);
        else complain(bookFaultWords(found.fault));
      });
    return () => {
      gone = true;
    };
  }, [card?.id, card?.changed]);
  return entry?.id === card?.id ? entry : null;
}

function Heading({ card, at }: { card: Card; at: { current: HTMLHeadingElement | null } }) {
  const [renaming, setRenaming] = useState(false);
  const name = nameOfCard(card);
  const canWrite = book.value?.readOnly === null;
  return (
    <header class="entry-head">
      {renaming ? (
        <Renaming card={card} done={() => setRenaming(false)} />
      ) : (
        <h2 ref={at} tabIndex={-1}>
          {name}
        </h2>
      )}
      <p class="small">
        {KIND_WORDS[card.kind]} · {dateWords(card.date)} <SampleMark id={card.id} />
      </p>
      <p class="entry-actions">
        <Onward card={card} />
        {canWrite && !renaming && (
          <button type="button" class="quiet" onClick={() => setRenaming(true)}>
            {sayBook.rename}
          </button>
        )}
        {canWrite && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              void putIntoBin(card).then((away) => {
                if (away && route.value.open === card.id) go('book');
              });
            }}
          >
            <BinIcon size={20} />
            {sayBook.remove}
          </button>
        )}
      </p>
    </header>
  );
}

function Body({ entry, card }: { entry: Entry; card: Card }) {
  const groups = contentsOf(entry, pigmentWords);
  const cloths = clothsOf(entry);
  const { note } = entry.body;
  return (
    <>
      <Photograph card={card} />
      {cloths.length > 0 && <ClothLine label={nameOfCard(card)} cloths={cloths} />}
      {groups.length > 0 && <h3 class="unseen">{sayBook.contents}</h3>}
      {groups.map(({ heading, lines }) => (
        <section key={heading} class="group">
          {heading && <h4>{heading}</h4>}
          <ul class="lines">
            {lines.map((line) => (
              <li key={lines.indexOf(line)}>
                <LineRow line={line} />
              </li>
            ))}
          </ul>
        </section>
      ))}
      {note && (
        <section>
          <h3>{sayBook.noteHeading}</h3>
          <p class="note">{note}</p>
        </section>
      )}
      <Out entry={entry} />
      <Printed entry={entry} />
    </>
  );
}

function LineRow({ line: { name, lab, words } }: { line: Line }) {
  return (
    <div class="line">
      {lab && (
        <svg viewBox="0 0 72 34" width="72" height="34" aria-hidden="true">
          <Patch hex={shownOf(lab)} seed={seedOf(name)} x={1} y={2} width={70} height={30} />
        </svg>
      )}
      <div>
        <p class="line-name">{name}</p>
        {words.length > 0 && <p class="small">{words.join(' · ')}</p>}
      </div>
      {lab && (
        <button
          type="button"
          class="quiet like"
          onClick={() => findLike(lab)}
          aria-label={sayBook.findLike(name)}
        >
          <SearchIcon size={20} />
        </button>
      )}
    </div>
  );
}

/** Searches the book for entries with this colour. */
function findLike(lab: Lab): void {
  colour.value = lab;
  scrolled.y = 0;
  go('book');
}
