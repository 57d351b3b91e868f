import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { Lab } from '../../../colour/lab.ts';
import { seedOf } from '../../../drawing/drawing-seed.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { BrushStroke } from '../../components/drawn/BrushStroke.tsx';
import { ClothLine } from '../../components/drawn/ClothLine.tsx';
import { BinIcon, SearchIcon } from '../../components/drawn/icons.tsx';
import { dateWords } from '../../state/locale-format.ts';
import { go, hrefOf, route } from '../../state/route.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { book, showError } from '../../state/studio.ts';
import { bookTexts, KIND_WORDS } from '../../texts/book-texts.ts';
import { clothsOf } from './EntryDrawing.tsx';
import { EntryExport, PrintedEntry } from './EntryExport.tsx';
import { EntryLinks } from './EntryLinks.tsx';
import { EntryPhotograph } from './EntryPhotograph.tsx';
import { putIntoBin, Renaming } from './entry-actions.tsx';
import { entrySummaries, scrolled, searchColour } from './entry-list.ts';
import { nameOfCard, pigmentWords } from './entry-names.ts';
import { type EntryItem, entryItems } from './entry-text.ts';
import { SampleMark } from './SampleBook.tsx';
import { VersionConflict } from './VersionConflict.tsx';

/** One complete entry with its actions. */
export function EntryPane({ id, back = false }: { id: string; back?: boolean }) {
  const card = entrySummaries.value?.find((one) => one.id === id) ?? null;
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
            {bookTexts.back}
          </a>
        </p>
      )}
      {card === null ? (
        <>
          <h2 ref={heading} tabIndex={-1}>
            {bookTexts.goneHeading}
          </h2>
          <p>{bookTexts.gone}</p>
          <p class="main-actions">
            <a class="button main" href={hrefOf('book')}>
              {bookTexts.back}
            </a>
            <a class="button" href={hrefOf('book', 'bin')}>
              {bookTexts.toBin}
            </a>
          </p>
        </>
      ) : (
        <>
          <Heading key={card.id} card={card} at={heading} />
          <VersionConflict card={card} />
          {entry && <Body entry={entry} card={card} />}
        </>
      )}
    </article>
  );
}

function useEntry(card: EntrySummary | null): Entry | null {
  const [entry, setEntry] = useState<Entry | null>(null);
  useEffect(() => {
    let gone = false;
    if (card)
      void book.value?.get(card.kind, card.id).then((found) => {
        if (gone) return;
        if (found.ok) setEntry(found.value);
        else showError(bookFaultWords(found.fault));
      });
    return () => {
      gone = true;
    };
  }, [card?.id, card?.changed]);
  return entry?.id === card?.id ? entry : null;
}

function Heading({ card, at }: { card: EntrySummary; at: { current: HTMLHeadingElement | null } }) {
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
        <EntryLinks card={card} />
        {canWrite && !renaming && (
          <button type="button" class="quiet" onClick={() => setRenaming(true)}>
            {bookTexts.rename}
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
            {bookTexts.remove}
          </button>
        )}
      </p>
    </header>
  );
}

function Body({ entry, card }: { entry: Entry; card: EntrySummary }) {
  const groups = entryItems(entry, pigmentWords);
  const cloths = clothsOf(entry);
  const { note } = entry.body;
  return (
    <>
      <EntryPhotograph card={card} />
      {cloths.length > 0 && <ClothLine label={nameOfCard(card)} cloths={cloths} />}
      {groups.length > 0 && <h3 class="unseen">{bookTexts.contents}</h3>}
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
          <h3>{bookTexts.noteHeading}</h3>
          <p class="note">{note}</p>
        </section>
      )}
      <EntryExport entry={entry} />
      <PrintedEntry entry={entry} />
    </>
  );
}

function LineRow({ line: { name, lab, words } }: { line: EntryItem }) {
  return (
    <div class="line">
      {lab && (
        <svg viewBox="0 0 72 34" width="72" height="34" aria-hidden="true">
          <BrushStroke
            hex={cssColourOf(lab)}
            seed={seedOf(name)}
            x={1}
            y={2}
            width={70}
            height={30}
          />
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
          aria-label={bookTexts.findLike(name)}
        >
          <SearchIcon size={20} />
        </button>
      )}
    </div>
  );
}

/** Searches the book for entries with this colour. */
function findLike(lab: Lab): void {
  searchColour.value = lab;
  scrolled.y = 0;
  go('book');
}
