import { signal } from '@preact/signals';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { EntrySummary } from '../../../book/schema/entry-summary.ts';
import type { Kind } from '../../../book/schema/record.ts';
import type { SearchHit } from '../../../book/store/search-index.ts';
import { BookIcon, PaletteIcon, PrintIcon } from '../../components/drawn/icons.tsx';
import { VirtualList } from '../../components/VirtualList.tsx';
import { dateWords } from '../../state/locale-format.ts';
import { hrefOf, openBeside, route } from '../../state/route.ts';
import { bookTexts, KIND_WORDS } from '../../texts/book-texts.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';
import { ShelfLink } from '../shelf/ShelfLink.tsx';
import { EntryPane } from './EntryPane.tsx';
import { EntrySearch } from './EntrySearch.tsx';
import { Dabs, useThumbnail } from './EntryThumbnail.tsx';
import {
  clearSearch,
  conflictIds,
  conflictPairs,
  entrySummaries,
  onlyVersions,
  scrolled,
  searchHits,
} from './entry-list.ts';
import { nameOfCard } from './entry-names.ts';
import { SampleLine, SampleMark, SampleOffer } from './SampleBook.tsx';
import { CopyReminder } from './StorageStatus.tsx';

const wide = matchMedia('(min-width: 60rem)');
/** Whether the window has room for the list and an entry side by side. */
const isWide = signal(wide.matches);
const print = matchMedia('print');
wide.addEventListener('change', () => {
  // Paper is narrow: printing must not change the layout.
  if (!print.matches) isWide.value = wide.matches;
});

/**
 * The list of entries with its search, and the open entry: beside the list, or instead of it on a
 * phone.
 */
export function EntryList() {
  const { open } = route.value;
  const all = entrySummaries.value;
  const first = useRested(searchHits.value[0]?.card.id ?? null);
  const beside = open ?? first;
  const isOver = open !== null && !isWide.value;
  useLayoutEffect(() => {
    if (isOver) return;
    scrollTo(0, scrolled.y);
    const keep = () => {
      scrolled.y = scrollY;
    };
    addEventListener('scroll', keep, { passive: true });
    return () => removeEventListener('scroll', keep);
  }, [isOver]);

  if (all === null) return <p role="status">{sharedTexts.bookOpening}</p>;
  if (isOver) return <EntryPane id={open} back />;
  if (all.length === 0)
    return (
      <>
        <p class="lead">{sharedTexts.bookEmpty}</p>
        <p class="main-actions">
          <a class="button main" href={hrefOf('walk')}>
            {sharedTexts.toWalk}
          </a>
          <a class="button" href={hrefOf('book', 'copies')}>
            {bookTexts.bringHeading}
          </a>
        </p>
        <SampleOffer quiet />
        <ShelfLink />
        <GuideLink />
      </>
    );
  const shown = searchHits.value;
  return (
    <div class="panes">
      <div class="pane-list">
        <CopyReminder />
        <SampleLine />
        <EntrySearch />
        <Versions />
        <p class="small found" role="status">
          {bookTexts.found(shown.length, all.length)}
        </p>
        {shown.length === 0 ? (
          <p>
            {bookTexts.none}{' '}
            <button type="button" class="quiet" onClick={clearSearch}>
              {bookTexts.clear}
            </button>
          </p>
        ) : (
          <VirtualList
            items={shown}
            rem={5.5}
            label={bookTexts.listOf}
            keyOf={({ card }) => card.id}
            row={(one) => <Row one={one} isOpen={isWide.value && one.card.id === beside} />}
          />
        )}
        <GuideLink />
      </div>
      {isWide.value && (
        <div class="pane-entry">{beside !== null && <EntryPane key={beside} id={beside} />}</div>
      )}
    </div>
  );
}

const GuideLink = () => (
  <p>
    <a class="way" href={hrefOf('book', 'guide')}>
      {sharedTexts.guide}
    </a>
  </p>
);

/** Delay in milliseconds before the first result is drawn. */
const REST = 400;

/**
 * The first entry of the list, debounced. Drawing cloths takes longer than drawing the whole list,
 * so typing in the search does not wait for them.
 */
function useRested(id: string | null): string | null {
  const [rested, setRested] = useState<string | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setRested(id), REST);
    return () => clearTimeout(timer);
  }, [id]);
  return rested;
}

function Versions() {
  const { length } = conflictPairs.value;
  if (length === 0) return null;
  return (
    <div class="versions">
      <p>{bookTexts.twoVersions(length)}</p>
      <button
        type="button"
        class="quiet"
        onClick={() => {
          onlyVersions.value = !onlyVersions.value;
        }}
      >
        {onlyVersions.value ? bookTexts.showAll : bookTexts.showVersions}
      </button>
    </div>
  );
}

/** For an entry without a photograph: its first colour, or the icon of its kind. */
function Sign({ card }: { card: EntrySummary }) {
  if (card.colours.length > 0 || card.picture !== undefined || card.specimen !== undefined)
    return <Dabs card={{ ...card, colours: card.colours.slice(0, 1) }} width={40} height={40} />;
  const Icon = SIGNS[card.kind] ?? BookIcon;
  return <Icon size={32} />;
}
const SIGNS: Partial<Record<Kind, typeof BookIcon>> = { palette: PaletteIcon, sheet: PrintIcon };

function Row({ one: { card, deltaE00 }, isOpen }: { one: SearchHit; isOpen: boolean }) {
  const url = useThumbnail(card);
  const href = hrefOf('book', card.id);
  return (
    <a
      class="row"
      href={href}
      aria-current={isOpen ? 'true' : undefined}
      onClick={(event) => {
        if (!isWide.value || event.metaKey || event.ctrlKey || event.shiftKey) return;
        // Beside the list an entry opens without a navigation, so that the list keeps its position.
        event.preventDefault();
        openBeside('book', card.id);
      }}
    >
      <span class="row-picture">
        {url ? <img src={url} alt="" width="72" height="72" /> : <Sign card={card} />}
      </span>
      <span class="row-words">
        <span class="row-name">
          <SampleMark id={card.id} /> {nameOfCard(card)}
        </span>
        <span class="small" aria-hidden="true">
          {KIND_WORDS[card.kind]} · {dateWords(card.date)}
          {deltaE00 !== null && ` · ${bookTexts.differs(deltaE00)}`}
          {conflictIds.value.has(card.id) && ` · ${bookTexts.conflictHeading.toLowerCase()}`}
        </span>
        <Dabs card={card} width={260} height={22} />
      </span>
    </a>
  );
}
