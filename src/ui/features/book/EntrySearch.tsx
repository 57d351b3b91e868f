import { type Signal, useSignal } from '@preact/signals';
import type { Kind } from '../../../book/schema/record.ts';
import { SORTS, type Sort } from '../../../book/store/search-index.ts';
import { nameOf } from '../../../colour/describe-colour.ts';
import { bookTexts, KIND_WORDS, SORT_WORDS } from '../../texts/book-texts.ts';
import { ColourSearch } from './ColourSearch.tsx';
import {
  clearSearch,
  conflictIds,
  isNarrowed,
  kindsThere,
  onlyVersions,
  pigmentsThere,
  searchColour,
  searchFrom,
  searchKind,
  searchOrder,
  searchPigments,
  searchTo,
  searchWords,
} from './entry-list.ts';
import { pigmentWords } from './entry-names.ts';

/** The search form: words, and further criteria on demand. */
export function EntrySearch() {
  const isOpen = useSignal(false);
  return (
    <search class="finding">
      <label class="search">
        {bookTexts.search}
        <input
          type="search"
          placeholder={bookTexts.searchHint}
          value={searchWords}
          onInput={(event) => {
            searchWords.value = event.currentTarget.value;
          }}
        />
      </label>
      <details
        class="narrow"
        onToggle={({ currentTarget }) => {
          isOpen.value = currentTarget.open;
        }}
      >
        <summary>{bookTexts.narrow}</summary>
        {isOpen.value && <Fields />}
      </details>
      {isNarrowed.value && <Conditions />}
    </search>
  );
}

/** Mounted only when opened, because its options are computed from the whole book. */
function Fields() {
  const order = searchOrder.value ?? (searchColour.value ? 'nearest' : 'newest');
  return (
    <div class="narrow-fields">
      <ColourSearch />
      <label>
        {bookTexts.pigment}
        <select
          value=""
          onChange={({ currentTarget }) => {
            if (currentTarget.value)
              searchPigments.value = [...searchPigments.value, currentTarget.value];
            currentTarget.value = '';
          }}
        >
          <option value="">{bookTexts.anyPigment}</option>
          {pigmentsThere.value
            .filter((pigment) => !searchPigments.value.includes(pigment))
            .map((pigment) => (
              <option key={pigment} value={pigment}>
                {pigmentWords(pigment)}
              </option>
            ))}
        </select>
      </label>
      <label>
        {bookTexts.kind}
        <select
          value={searchKind.value ?? ''}
          onChange={({ currentTarget }) => {
            searchKind.value = currentTarget.value === '' ? null : (currentTarget.value as Kind);
          }}
        >
          <option value="">{bookTexts.everyKind}</option>
          {kindsThere.value.map((one) => (
            <option key={one} value={one}>
              {KIND_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
      <DayField label={bookTexts.from} day={searchFrom} />
      <DayField label={bookTexts.to} day={searchTo} />
      <label>
        {bookTexts.sort}
        <select
          value={order}
          onChange={({ currentTarget }) => {
            searchOrder.value = currentTarget.value as Sort;
          }}
        >
          {SORTS.filter((one) => one !== 'nearest' || searchColour.value).map((one) => (
            <option key={one} value={one}>
              {SORT_WORDS[one]}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

function DayField({ label, day }: { label: string; day: Signal<string> }) {
  return (
    <label>
      {label}
      <input
        type="date"
        value={day}
        onInput={(event) => {
          day.value = event.currentTarget.value;
        }}
      />
    </label>
  );
}

/** The active criteria, each with a button that removes it. */
function Conditions() {
  const all: (readonly [text: string, drop: () => void])[] = [];
  if (searchColour.value)
    all.push([
      bookTexts.chosenColour(nameOf(searchColour.value)),
      () => {
        searchColour.value = null;
      },
    ]);
  for (const pigment of searchPigments.value)
    all.push([
      pigmentWords(pigment),
      () => {
        searchPigments.value = searchPigments.value.filter((one) => one !== pigment);
      },
    ]);
  if (searchKind.value)
    all.push([
      KIND_WORDS[searchKind.value],
      () => {
        searchKind.value = null;
      },
    ]);
  for (const [label, day] of [
    [bookTexts.from, searchFrom],
    [bookTexts.to, searchTo],
  ] as const)
    if (day.value)
      all.push([
        `${label} ${day.value}`,
        () => {
          day.value = '';
        },
      ]);
  if (onlyVersions.value && conflictIds.value.size > 0)
    all.push([
      bookTexts.conflictHeading,
      () => {
        onlyVersions.value = false;
      },
    ]);
  return (
    <ul class="conditions">
      {all.map(([text, drop]) => (
        <li key={text}>
          <button
            type="button"
            class="condition"
            onClick={drop}
            aria-label={bookTexts.without(text)}
          >
            {text} <span aria-hidden="true">×</span>
          </button>
        </li>
      ))}
      <li>
        <button type="button" class="quiet" onClick={clearSearch}>
          {bookTexts.clear}
        </button>
      </li>
    </ul>
  );
}
